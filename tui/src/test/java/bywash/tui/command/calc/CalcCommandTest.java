package bywash.tui.command.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import picocli.CommandLine;

class CalcCommandTest {
    private static final int CASES = 68;

    /** What was typed, and everything that came of it. */
    private record Run(String typed, String out, String err, int exit) {}

    @TestFactory
    Stream<DynamicTest> everyExampleIsMetToTheByte() throws IOException {
        List<Run> examples = examples();
        assertEquals(CASES, examples.size(), "examples");
        return examples.stream()
                .map(expected ->
                        DynamicTest.dynamicTest(expected.typed(), () -> assertEquals(expected, run(expected.typed()))));
    }

    @Test
    void everyCalculationHasACaseThatWorksAndNearlyEveryOneACaseThatIsRefused() throws IOException {
        Set<String> works = new TreeSet<>();
        Set<String> refused = new TreeSet<>();
        for (Run run : examples()) {
            (run.exit() == 0 ? works : refused).add(run.typed().split(" ", 2)[0]);
        }
        Set<String> all = new TreeSet<>(
                new CommandLine(new CalcCommand()).getSubcommands().keySet());
        assertEquals(all, works);
        assertEquals(all, refused);
    }

    @Test
    void everyAnswerNamesItsSourceAndEveryDoseItsCautions() throws IOException {
        for (Run run : examples()) {
            if (run.exit() == 0 && !run.typed().contains("--json")) {
                assertTrue(run.out().contains("\nSource: "), run.typed());
            }
            if (run.exit() == 0
                    && (run.typed().startsWith("dechlorinate") || run.typed().startsWith("ph-dose"))) {
                assertTrue(run.out().contains("follow the label"), run.typed());
                assertTrue(run.out().contains("gloves and eye protection; never mix chemicals"), run.typed());
            }
        }
    }

    @Test
    void withoutASubcommandItListsThemOnStandardErrorAndExitsWithTwo() {
        Run run = run("");
        assertEquals(2, run.exit());
        assertEquals("", run.out());
        assertTrue(run.err().startsWith("Usage: calc [-h] [COMMAND]"), run.err());
        assertTrue(run.err().contains("Exit codes: 0 good, 2 usage."), run.err());
    }

    @Test
    void helpGoesToStandardOutputAndAnUnknownOptionIsUsage() {
        Run help = run("oxygen --help");
        assertEquals(0, help.exit());
        assertEquals("", help.err());
        assertTrue(help.out().startsWith("Usage: calc oxygen [-h] [--json]"), help.out());
        Run unknown = run("oxygen --bogus");
        assertEquals(2, unknown.exit());
        assertEquals("", unknown.out());
        assertTrue(unknown.err().startsWith("Unknown option: '--bogus'"), unknown.err());
    }

    private static Run run(String typed) {
        List<String> words = new ArrayList<>();
        Matcher m = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(typed);
        while (m.find()) {
            words.add(m.group(1) != null ? m.group(1) : m.group(2));
        }
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exit = new CommandLine(new CalcCommand())
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(words.toArray(new String[0]));
        return new Run(typed, out.toString(), err.toString().replace(System.lineSeparator(), "\n"), exit);
    }

    private static List<Run> examples() throws IOException {
        List<Run> runs = new ArrayList<>();
        String typed = "";
        StringBuilder out = new StringBuilder();
        StringBuilder err = new StringBuilder();
        for (String line : lines()) {
            String rest = line.length() > 2 ? line.substring(2) : "";
            switch (line.isEmpty() ? '#' : line.charAt(0)) {
                case '$' -> typed = rest;
                case '|' -> out.append(rest).append('\n');
                case '!' -> err.append(rest).append('\n');
                case '=' -> {
                    runs.add(new Run(typed, out.toString(), err.toString(), Integer.parseInt(rest)));
                    out.setLength(0);
                    err.setLength(0);
                }
                default -> assertTrue(line.isEmpty() || line.startsWith("#"), line);
            }
        }
        return runs;
    }

    private static List<String> lines() throws IOException {
        String path = "/calc/examples.txt";
        try (InputStream in = Objects.requireNonNull(CalcCommandTest.class.getResourceAsStream(path), path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        }
    }
}
