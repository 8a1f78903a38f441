package bywash.tui.command.calc;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What the calculations share: the answer to standard output, one message to standard error, the exit code. */
abstract class Calculation implements Callable<Integer> {
    private static final int GOOD = 0;
    private static final int USAGE = 2;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it before call()
    private CommandSpec spec;

    @Option(names = "--json", description = "Print one JSON object instead of lines.")
    private boolean json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    /** Works out the answer; an {@link IllegalArgumentException} says what was typed wrong. */
    abstract Answer answer();

    @Override
    public final Integer call() {
        try {
            Answer answer = answer();
            PrintWriter out = spec.commandLine().getOut();
            out.print(json ? AnswerText.json(spec.name(), answer) : AnswerText.lines(answer));
            out.flush();
            return GOOD;
        } catch (IllegalArgumentException e) {
            PrintWriter err = spec.commandLine().getErr();
            err.println("bywash calc " + spec.name() + ": " + e.getMessage());
            err.flush();
            return USAGE;
        }
    }
}
