package bywash.tui.command;

import bywash.tui.command.calc.CalcCommand;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry point: picks the command. */
@Command(
        name = "bywash",
        mixinStandardHelpOptions = true,
        version = "bywash 0.1.0",
        description = "Watches a recirculating fish-and-plant system and finds water nobody meant to let in.",
        subcommands = {WatchCommand.class, ReplayCommand.class, DemoCommand.class, CheckCommand.class, CalcCommand.class
        },
        footer = {
            "",
            "Exit codes: 0 good, 2 usage, 3 site file, 4 recording, 5 broker, 70 a fault of ours.",
            "Estimates are no test: confirm chlorine with a DPD kit."
        })
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        LogFile.begin();
        System.exit(commandLine().execute(args));
    }

    /** The command line, for tests too. */
    public static CommandLine commandLine() {
        CommandLine line = new CommandLine(new Main());
        line.setExecutionExceptionHandler((fault, command, parsed) -> {
            PrintWriter err = command.getErr();
            err.println("bywash: a fault of ours: " + fault);
            err.flush();
            return ExitCode.OUR_FAULT;
        });
        line.setExecutionStrategy(parsed -> {
            if (parsed.subcommand() == null && !parsed.isUsageHelpRequested() && !parsed.isVersionHelpRequested()) {
                parsed.commandSpec()
                        .commandLine()
                        .usage(parsed.commandSpec().commandLine().getErr());
                return ExitCode.USAGE;
            }
            return new CommandLine.RunLast().execute(parsed);
        });
        return line;
    }
}
