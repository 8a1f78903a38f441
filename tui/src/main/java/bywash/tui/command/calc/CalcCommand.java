package bywash.tui.command.calc;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The calculations on water, one subcommand each. */
@Command(
        name = "calc",
        description = "Works out one thing about the water; every number has its unit, every formula its source.",
        subcommands = {
            OxygenCommand.class,
            ChlorineFormCommand.class,
            ChlorineLimitsCommand.class,
            ChlorineWaitCommand.class,
            DechlorinateCommand.class,
            MainsInCommand.class,
            AmmoniaCommand.class,
            NitriteCommand.class,
            NitrateCommand.class,
            FeedCommand.class,
            CarbonateCommand.class,
            PhDoseCommand.class,
            PhProbeCommand.class,
            PhBufferCommand.class,
            OrpCommand.class,
            VesselCommand.class
        },
        footer = {"", "Exit codes: 0 good, 2 usage."})
public final class CalcCommand implements Callable<Integer> {
    private static final int USAGE = 2;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it before call()
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    /** Without a subcommand: the list of them to standard error. */
    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getErr());
        return USAGE;
    }
}
