package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Texts that drive a terminal, turn a line round, begin a spreadsheet's formula or a table's cell, wherever text comes in: the
 * site's name, topics, payloads, the feed's words and every entry. What comes out, alarm lines, messages, reports and sheets,
 * does nothing but be read. What a spreadsheet takes for a formula is that of OWASP's page on CSV injection.
 */
class HostileTextTest {
    private static final int CASES = 1 * Integer.getInteger("fuzz.times", 1);
    private static final Path SAMPLES = Path.of("..", "sample-feeds");
    private static final List<String> PIECES = List.of(
            "\u001b[2J",
            "\u001b]0;owned\u0007",
            "\u009b31m",
            "\u202etxt.exe",
            "\u2066x\u2069",
            "\u200f",
            "\u2028",
            "\r\n# heading\n",
            "\n| a | b |\n",
            "a|b",
            "`code`",
            "<script>alert(1)</script>",
            "[x](javascript:1)",
            "![x](http://127.0.0.1/x.png)",
            "\u0000",
            "\u007f",
            "\t",
            "\"quoted\", and comma",
            "'",
            "\\",
            "fish");
    private static final List<String> FORMULAS = List.of(
            "=1+1",
            "=cmd|' /C calc'!A0",
            "+1+1",
            "-1+1",
            "@SUM(1)",
            "\t=1+1",
            "\r=1+1",
            " =1+1",
            "\n@x",
            "\uff1d1+1",
            "\uff0b1",
            "\uff0d1",
            "\uff20x");
    /** Every kind of entry with its texts open. */
    private static final List<String> ENTRIES = List.of(
            "'operator':'note','text':'%s'",
            "'operator':'batch-treat','vessel':'reserve','treatment':'%s'",
            "'operator':'feed','mass':'10 g','cohort':'%s'",
            "'operator':'fish-in','cohort':'%s','species':'%s','count':10,'mean':'20 g'",
            "'operator':'fish-loss','cohort':'spring','count':1,'cause':'%s'",
            "'operator':'fish-move','cohort':'%s','count':1,'vessel':'%s'",
            "'operator':'plant','vessel':'bed-1','crop':'%s','area':'1 m2'",
            "'operator':'crop-harvest','vessel':'%s','crop':'%s','mass':'100 g'",
            "'operator':'dose','vessel':'sump','reagent':'%s','mass':'1 g'",
            "'operator':'calibrate','probe':'fish-ph','detail':'%s'",
            "'operator':'probe-care','probe':'fish-ph','care':'%s'",
            "'operator':'acknowledge','alarm':'%s','subject':'%s'",
            "'operator':'shelve','alarm':'%s','subject':'%s','duration':'10 min'",
            "'operator':'maintenance-start','subject':'%s','duration':'10 min','detail':'%s'",
            "'operator':'out-of-service','alarm':'unplanned-inflow','subject':'%s','detail':'%s'",
            "'operator':'step-done','incident':'20260504T073225Z-unplanned-inflow-sump','step':'stop-water','note':'%s'",
            "'operator':'withdraw','entry':'note','entered':'2026-05-04T07:40:00.000Z','why':'%s'",
            "'operator':'%s','text':'%s'",
            "'feed':'lost','detail':'%s'",
            "'feed':'up','detail':'%s'",
            "'topic':'%s','payload':'%s','qos':0,'retain':false",
            "'topic':'larkfield/orp','payload':'%s','qos':0,'retain':false",
            "'topic':'larkfield/do','payload':'%s','qos':0,'retain':false");

    @TempDir
    Path dir;

    private SplittableRandom random = new SplittableRandom(0);

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void whatComesOutIsOnlyRead(long seed) throws Exception {
        random = new SplittableRandom(seed);
        for (int i = 0; i < CASES; i++) {
            Path site = site();
            Path recording = recording();
            plain(Cli.run("check", site));
            Cli replay = Cli.run("replay", "--headless", "--site", site, recording);
            plain(replay);
            for (String line : replay.out().lines().toList()) {
                new ObjectMapper().readTree(line);
            }
            assertTrue(replay.out().contains("feed-lost"), "no alarm with the feed's words");
            plain(Cli.run("sheet", "--site", site, recording));
            markdown(Cli.run("sheet", "--format", "markdown", "--site", site, recording));
            for (String[] what : new String[][] {{"--season"}, {"--incident", "latest"}, {"--day", "2026-05-04"}}) {
                report(site, recording, what);
            }
        }
    }

    private void report(Path site, Path recording, String... what) throws Exception {
        Path csv = Files.createTempDirectory(dir, "csv");
        Path json = dir.resolve("report.json");
        Object[] words = Stream.of(
                        Stream.of("report", "--site", site, "--csv", csv, "--json", json),
                        Stream.of(what),
                        Stream.of(recording))
                .flatMap(s -> s)
                .toArray();
        markdown(Cli.run(words));
        plain(Files.readString(json));
        new ObjectMapper().readTree(Files.readString(json));
        try (Stream<Path> files = Files.list(csv)) {
            for (Path file : files.toList()) {
                csv(Files.readString(file));
            }
        }
    }

    private Path site() throws IOException {
        String text = Files.readString(SAMPLES.resolve("sites").resolve("larkfield.yaml"));
        String name = json(hostile());
        return Files.writeString(
                dir.resolve("site.yaml"),
                text.replaceFirst("name: .*", Matcher.quoteReplacement("name: \"" + name + "\"")));
    }

    private Path recording() throws IOException {
        List<String> lines = new ArrayList<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(
                        Files.newInputStream(SAMPLES.resolve("recordings").resolve("valve-open.jsonl.gz"))),
                StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                lines.add(line);
                Matcher time = Pattern.compile("\\{\"time\":\"(2026-05-04T07:[3-5][^\"]*)\"")
                        .matcher(line);
                if (time.lookingAt() && random.nextInt(12) == 0) {
                    lines.add(line(time.group(1), ENTRIES.get(random.nextInt(ENTRIES.size()))));
                }
                if (time.lookingAt() && time.group(1).startsWith("2026-05-04T07:55:0")) {
                    lines.add(line(time.group(1), "'feed':'lost','detail':'%s'"));
                }
            }
        }
        return Files.write(dir.resolve("hostile.jsonl"), lines);
    }

    private String line(String time, String form) {
        StringBuilder text = new StringBuilder("{'time':'" + time + "'," + form + "}");
        for (int at = text.indexOf("'"); at >= 0; at = text.indexOf("'", at)) {
            text.setCharAt(at, '"');
        }
        for (int at = text.indexOf("%s"); at >= 0; at = text.indexOf("%s", at)) {
            String hostile = json(hostile());
            text.replace(at, at + 2, hostile);
            at += hostile.length();
        }
        return text.toString();
    }

    private String hostile() {
        StringBuilder text = new StringBuilder();
        if (random.nextBoolean()) {
            text.append(FORMULAS.get(random.nextInt(FORMULAS.size())));
        }
        for (int n = random.nextInt(1, 4); n > 0; n--) {
            text.append(PIECES.get(random.nextInt(PIECES.size())));
        }
        return text.toString();
    }

    /** Also a YAML text in double quotes. */
    private static String json(String text) {
        StringBuilder out = new StringBuilder();
        text.chars()
                .forEach(c -> out.append(
                        c >= ' ' && c < 0x7f && c != '"' && c != '\\'
                                ? String.valueOf((char) c)
                                : String.format("\\u%04x", c)));
        return out.toString();
    }

    private static void plain(Cli run) {
        assertFalse(run.code() == ExitCode.OUR_FAULT, run.err());
        plain(run.out());
        plain(run.err());
    }

    private static void plain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            int type = Character.getType(c);
            boolean unfit = c != '\n' && Character.isISOControl(c)
                    || type == Character.FORMAT
                    || type == Character.LINE_SEPARATOR
                    || type == Character.PARAGRAPH_SEPARATOR;
            int at = i;
            assertFalse(
                    unfit, () -> String.format("U+%04X after %s", (int) c, text.substring(Math.max(0, at - 80), at)));
        }
    }

    /** Every row of a table has the columns of its head, and nothing typed is a tag, code, a link or a heading. */
    private static void markdown(Cli run) {
        plain(run);
        assertEquals(0, run.code(), run.err());
        int columns = 0;
        for (String line :
                run.out().replaceAll("(?s)```text\n.*?\n```", "").lines().toList()) {
            String bare = line.replaceAll("\\\\.", "");
            int pipes = (int) bare.chars().filter(c -> c == '|').count();
            assertTrue(pipes == 0 || bare.startsWith("| ") && bare.endsWith("|"), line);
            assertTrue(pipes == 0 || columns == 0 || pipes == columns, line);
            columns = pipes;
            assertFalse(bare.contains("<") || bare.contains("`") || bare.contains("]("), line);
            assertFalse(bare.startsWith("# heading"), line);
        }
    }

    private static void csv(String text) {
        plain(text);
        List<List<String>> rows = rows(text);
        for (List<String> row : rows) {
            assertEquals(rows.get(0).size(), row.size(), row::toString);
            for (String cell : row) {
                boolean number = cell.matches("[-+]?\\d+(\\.\\d+)?");
                assertFalse(
                        !number && cell.strip().matches("(?s)[=+\\-@\uff1d\uff0b\uff0d\uff20].*"),
                        "a formula: " + cell);
            }
        }
    }

    /** As RFC 4180 has it. */
    private static List<List<String>> rows(String text) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        Matcher cell =
                Pattern.compile("(?:\"((?:[^\"]|\"\")*)\"|([^\",\n]*))([,\n])").matcher(text);
        int at = 0;
        while (at < text.length()) {
            assertTrue(cell.find(at) && cell.start() == at, "no cell at " + text.substring(at));
            row.add(cell.group(1) != null ? cell.group(1).replace("\"\"", "\"") : cell.group(2));
            if (cell.group(3).equals("\n")) {
                rows.add(row);
                row = new ArrayList<>();
            }
            at = cell.end();
        }
        return rows;
    }

    @Test
    void theLogTakesNoControlsAndNoLineThatLooksLikeItsOwn() {
        LogRecord record = new LogRecord(Level.WARNING, "seen {0}");
        record.setParameters(new Object[] {"\u001b[2J\nNov 26, 2026 INFO: all is well\u202e\u009b"});
        record.setThrown(new IOException("\u001b]0;x\u0007 of a broker"));
        String text = new PlainLog().format(record);
        plain(text.replace("\t", " "));
        assertFalse(text.lines().anyMatch(line -> line.startsWith("Nov 26, 2026 INFO")), text);
        assertTrue(text.contains("all is well") && text.contains("of a broker"), text);
    }
}
