package bywash.tui.command;

import bywash.ingest.journal.Journal;
import bywash.ingest.text.PlainText;
import bywash.tui.command.calc.CalcCommand;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Entry point: picks the command. */
@Command(
        name = "bywash",
        mixinStandardHelpOptions = true,
        version = Main.VERSION,
        description = "Watches a recirculating fish-and-plant system and finds water nobody meant to let in.",
        subcommands = {
            WatchCommand.class,
            AttachCommand.class,
            LogCommand.class,
            RecordCommand.class,
            BackupCommand.class,
            ReplayCommand.class,
            SheetCommand.class,
            ReportCommand.class,
            DemoCommand.class,
            CheckCommand.class,
            CalcCommand.class
        },
        footer = {
            "",
            "Exit codes: 0 good, 2 usage, 3 site file, 4 recording, 5 broker, 70 a fault of ours.",
            "Estimates are no test: confirm chlorine with a DPD kit."
        })
public final class Main {
    static final String VERSION = "bywash 0.1.0";
    private static final int LONGEST = 400;

    @Option(names = "--licences", description = "Lists the libraries in this program with their licences.")
    private boolean licences;

    private Main() {}

    public static void main(String[] args) {
        System.setProperty(LastingLog.PROPERTY, LastingLog.class.getName());
        Journal.libraryFolder(StateFolder.standard().resolve("native"), InstantSource.system());
        HeadStart.forCommand(args);
        LogFile.begin();
        int code = commandLineFor(args).execute(args);
        LogFile.end();
        System.exit(code);
    }

    /**
     * With the one command that is asked for, where it is named: to look at all of them, or only at the annotation that lists
     * them, takes half the start.
     */
    static CommandLine commandLineFor(String... args) {
        Object command = args.length == 0 ? null : named(args[0]);
        if (command == null) {
            return commandLine();
        }
        CommandLine line = new CommandLine(CommandSpec.create().name("bywash"));
        line.addSubcommand(args[0], command);
        return prepared(line);
    }

    /** Of the commands above; null for any other word. */
    private static @Nullable Object named(String word) {
        return switch (word) {
            case "watch" -> new WatchCommand();
            case "attach" -> new AttachCommand();
            case "log" -> new LogCommand();
            case "record" -> new RecordCommand();
            case "backup" -> new BackupCommand();
            case "replay" -> new ReplayCommand();
            case "sheet" -> new SheetCommand();
            case "report" -> new ReportCommand();
            case "demo" -> new DemoCommand();
            case "check" -> new CheckCommand();
            case "calc" -> new CalcCommand();
            default -> null;
        };
    }

    /** The command line, for tests too. */
    public static CommandLine commandLine() {
        return prepared(new CommandLine(new Main()));
    }

    private static CommandLine prepared(CommandLine line) {
        line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        line.setParameterExceptionHandler((fault, args) -> usage(fault));
        giveVersion(line);
        line.setExecutionExceptionHandler((fault, command, parsed) -> {
            PrintWriter err = command.getErr();
            err.println("bywash: a fault of ours: " + PlainText.of(fault.toString(), LONGEST));
            err.flush();
            return ExitCode.OUR_FAULT;
        });
        line.setExecutionStrategy(parsed -> {
            if (parsed.matchedOptionValue("--licences", false)) {
                return licences(parsed.commandSpec().commandLine());
            }
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

    private static int licences(CommandLine command) {
        try (InputStream in = Main.class.getResourceAsStream("/bywash/third-party.txt")) {
            if (in == null) {
                command.getErr().println("bywash: the list of libraries was not built in; build with mvn package");
                return ExitCode.OUR_FAULT;
            }
            command.getOut().println(new String(in.readAllBytes(), StandardCharsets.UTF_8).strip());
            command.getOut().flush();
            return ExitCode.GOOD;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void giveVersion(CommandLine line) {
        line.getCommandSpec().version(VERSION);
        line.getSubcommands().values().forEach(Main::giveVersion);
    }

    /** What is wrong with the words typed, what was probably meant, and where the right ones stand. */
    private static int usage(CommandLine.ParameterException fault) {
        CommandLine command = fault.getCommandLine();
        PrintWriter err = command.getErr();
        String name = command.getCommandSpec().qualifiedName();
        err.println(
                name + ": " + PlainText.of(String.valueOf(fault.getMessage()), LONGEST) + "; see " + name + " --help");
        if (fault instanceof CommandLine.UnmatchedArgumentException unmatched) {
            List<String> near = unmatched.getSuggestions();
            if (!near.isEmpty()) {
                err.println("did you mean " + String.join(", ", near) + "?");
            }
        }
        err.flush();
        return ExitCode.USAGE;
    }
}
