package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.samples.SampleRecordings;
import bywash.tui.watch.JournalOfASample;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What happened that morning, and what did we do? Asked while the watch runs. */
class ReportCommandTest {
    private static final String INCIDENT = "20260504T073225Z-unplanned-inflow-sump";

    @TempDir
    static Path state;

    @TempDir
    Path out;

    private static JournalOfASample journal;

    private static Instant at(String clock) {
        return Instant.parse("2026-05-04T" + clock + "Z");
    }

    @BeforeAll
    static void watch() throws Exception {
        journal = new JournalOfASample(
                state,
                SampleRecordings.VALVE_OPEN,
                List.of(
                        new OperatorEntry.Acknowledge(at("07:38:00"), null, null),
                        new OperatorEntry.WaterTest(at("07:50:00"), "fish-tank", "total-chlorine", 0.05),
                        new OperatorEntry.StepDone(at("07:52:00"), INCIDENT, "stop-water", "hose *in* the sump"),
                        new OperatorEntry.Dose(at("08:10:00"), "sump", "sodium thiosulfate", 1.5),
                        new OperatorEntry.Note(at("08:30:00"), "=fish calm | all of them")));
    }

    @AfterAll
    static void end() {
        journal.close();
    }

    private static Cli report(Object... words) {
        return Cli.run(Stream.concat(Stream.of("report", "--state", state), Stream.of(words))
                .toArray());
    }

    private JsonNode json(Object... words) throws Exception {
        Path file = out.resolve("report.json");
        Cli run = report(
                Stream.concat(Stream.of(words), Stream.of("--json", file)).toArray());
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(Files.readString(file));
    }

    @Test
    void listsTheIncidentsWhenAskedNothing() {
        Cli run = report();
        assertEquals(0, run.code(), run.err());
        assertTrue(
                run.out().startsWith("Larkfield glasshouse, the journal of 2026-05-04 05:00 to 2026-05-04 10:00"),
                run.out());
        assertTrue(run.out().contains("2026-05-04 08:32  "), run.out());
        assertTrue(run.out().contains(INCIDENT), run.out());
    }

    private static List<String> headings(String markdown) {
        return markdown.lines().filter(l -> l.startsWith("#")).toList();
    }

    @Test
    void tellsAnIncidentWithAllThatBelongsToIt() {
        Cli run = report("--incident", "latest");
        assertEquals(0, run.code(), run.err());
        assertEquals(
                List.of(
                        "# Incident " + INCIDENT + ", Larkfield glasshouse",
                        "## What happened, and what was done",
                        "## Alarms",
                        "## Water in and out",
                        "## Chlorine residual of the system, estimated",
                        "## Tests",
                        "## Measures",
                        "## What the readings rule out",
                        "## Readings",
                        "## Cautions"),
                headings(run.out()));
        for (String line : List.of(
                "| 2026-05-04 08:38 | entry |  | acknowledged all |",
                "| 2026-05-04 08:50 | entry |  | test of fish-tank: total chlorine 0.05 mg/L |",
                "| 2026-05-04 09:10 | entry |  | sump dosed: sodium thiosulfate, 1.5 g |",
                "| 2026-05-04 09:30 | entry |  | note: =fish calm \\| all of them |")) {
            assertTrue(run.out().contains(line + "\n"), line);
        }
        assertTrue(run.out().contains("| 2026-05-04 08:52 | hose \\*in\\* the sump |"), run.out());
        assertTrue(run.out().contains("| 2026-05-04 08:32 | alarm | sump | unplanned-inflow unacknowledged: "));
        assertFalse(run.out().contains("calls again"), "repeated calls stand in the tables alone");
    }

    @Test
    void tellsADayWithTheRatesOfItsAlarms() {
        Cli run = report("--day", "2026-05-04");
        assertEquals(0, run.code(), run.err());
        assertTrue(headings(run.out())
                .containsAll(List.of(
                        "# 2026-05-04, Larkfield glasshouse",
                        "## Incidents",
                        "## How well the alarms served",
                        "## How soon they were answered",
                        "## Raised most often")));
        assertTrue(run.out().contains("| EEMUA 191 |"), run.out());
        assertTrue(run.out().contains("level in sump (sump-level, mm)\n\n```text\n"), run.out());
    }

    @Test
    void tellsTheAnswerTheTestAndTheLitresWithTheirRange() throws Exception {
        JsonNode json = json("--incident", INCIDENT);
        assertEquals("incident", json.path("report").asText());
        JsonNode first = json.path("alarms").path(0);
        assertEquals("unplanned-inflow", first.path("alarm").asText());
        assertEquals("2026-05-04T08:38:00+01:00", first.path("answered").asText());
        assertEquals(5, first.path("answered after min").asInt());
        JsonNode test = json.path("tests").path(0);
        assertEquals(0.05, test.path("value").asDouble());
        assertTrue(test.path("estimate then").asText().endsWith(" mg/L"), test.toString());
        JsonNode water = json.path("water-moved").path(0);
        assertEquals("sump", water.path("vessel").asText());
        // the simulated valve let in 8 L/min for 35 min: 280 L
        assertEquals(280, water.path("likely L").asDouble(), 140);
        assertTrue(water.path("low L").asInt() <= water.path("likely L").asInt(), water.toString());
        assertTrue(water.path("high L").asInt() >= water.path("likely L").asInt(), water.toString());
        JsonNode step = json.path("steps").path(0);
        assertEquals("stop-water", step.path("step").asText());
        assertEquals("2026-05-04T08:52:00+01:00", step.path("done").asText());
        assertTrue(json.path("residual").size() > 60);
    }

    @Test
    void tellsTheEveningByTheClockOfTheSite() throws Exception {
        JsonNode json = json("--from", "2026-05-04 08:45", "--to", "2026-05-04T09:15");
        List<String> times = json.path("timeline").findValuesAsText("time");
        assertFalse(times.isEmpty());
        times.forEach(t -> assertTrue(
                t.compareTo("2026-05-04T08:45:00+01:00") >= 0 && t.compareTo("2026-05-04T09:15:00+01:00") < 0, t));
        List<String> words = json.path("timeline").findValuesAsText("in words");
        assertTrue(words.stream().anyMatch(w -> w.startsWith("sump dosed: sodium thiosulfate")), words::toString);
    }

    @Test
    void holdsTheMonthAgainstThePublishedMarks() throws Exception {
        JsonNode rates = json("--month", "2026-05").path("alarm-rates");
        JsonNode hour = MissingNode.getInstance();
        for (JsonNode row : rates) {
            hour = row.path("alarms").asText().equals("an hour, most") ? row : hour;
        }
        assertEquals(15, hour.path("at most").asInt()); // EEMUA 191, from a secondary sheet
        assertEquals("yes", hour.path("held").asText());
        assertTrue(hour.path("figure").asInt() >= 3, rates.toString());
    }

    @Test
    void saysTheSameOfARecordingOfTheJournal() throws Exception {
        Path recording = out.resolve("all.jsonl.gz");
        assertEquals(0, Cli.run("record", recording, "--state", state).code());
        Cli ofRecording = Cli.run(
                "report",
                recording,
                "--site",
                JournalOfASample.SITE,
                "--from",
                "2026-05-04T08:00",
                "--to",
                "2026-05-04T09:45");
        assertEquals(0, ofRecording.code(), ofRecording.err());
        assertEquals(
                report("--from", "2026-05-04T08:00", "--to", "2026-05-04T09:45").out(), ofRecording.out());
    }

    @Test
    void writesEachTableAsAFileInWhichNothingIsAFormula() throws Exception {
        Path csv = out.resolve("csv");
        Path markdown = out.resolve("r.md");
        Cli run = report("--day", "2026-05-04", "--csv", csv, "--out", markdown);
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.out());
        String timeline = Files.readString(csv.resolve("timeline.csv"));
        assertTrue(timeline.startsWith("time,what,subject,in words,incident\n"), timeline);
        assertTrue(timeline.contains(",note: =fish calm | all of them,"), timeline);
        assertTrue(Files.readString(markdown).contains("note: =fish calm \\| all of them"));
        assertTrue(run.err().matches("\\d+ tables written to .*\n"), run.err());
    }

    @Test
    void theSeasonComesOutOfTheJournalToo() {
        Cli run = report("--season");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().startsWith("# Season of Larkfield glasshouse"), run.out());
        assertTrue(run.out().contains("| fish-ph | "), run.out());
    }

    @Test
    void saysWhichIncidentsThereAreWhenAskedForAnother() {
        Cli run = report("--incident", "nosuch");
        assertEquals(2, run.code());
        assertTrue(
                run.err().startsWith("--incident nosuch: no such incident; the incidents in the journal:\n"),
                run.err());
        assertTrue(run.err().contains(INCIDENT), run.err());
        assertEquals("", run.out());
    }

    @Test
    void saysHowFarTheRecordReachesWhenAskedForAnotherTime() {
        Cli run = report("--month", "2025-02");
        assertEquals(2, run.code());
        assertTrue(
                run.err()
                        .startsWith("nothing is on record of 2025-02; the journal reaches from 2026-05-04 05:00 to"
                                + " 2026-05-04 "),
                run.err());
        assertTrue(run.err().contains(INCIDENT), run.err());
    }

    @Test
    void saysInOneLineWhatIsWrongWithTheWords() {
        assertWrong(2, "--day yesterday: not a day; give one such as 2026-05-14", "--day", "yesterday");
        assertWrong(2, "--month 2026-5: not a month; give one such as 2026-05", "--month", "2026-5");
        assertWrong(2, "--from six: not a time; give one such as 2026-05-14T18:00", "--from", "six");
        assertWrong(
                2,
                "give one of --incident, --day, --month, --from and --to, --season, not several",
                "--day",
                "2026-05-04",
                "--season");
        assertWrong(
                2,
                "--from 2026-05-04 08:00 is not before --to 2026-05-04 07:00; give an earlier one",
                "--from",
                "2026-05-04T08:00",
                "--to",
                "2026-05-04T07:00");
    }

    private static void assertWrong(int code, String message, Object... words) {
        Cli run = report(words);
        assertEquals(code, run.code(), run.err());
        assertEquals(message + "\n", run.err());
        assertEquals("", run.out());
    }

    @Test
    void saysThatThereIsNoJournal() {
        Cli run = Cli.run("report", "--state", out);
        assertEquals(4, run.code());
        assertEquals("no journal in " + out + "; give --state the folder of a watch\n", run.err());
        Cli recording = Cli.run("report", out.resolve("none.jsonl"), "--site", JournalOfASample.SITE);
        assertEquals(4, recording.code());
        assertTrue(recording.err().contains("none.jsonl: cannot be read"), recording.err());
    }

    @Test
    void saysWhereItCannotWrite() {
        Cli run = report(
                "--incident",
                "latest",
                "--out",
                out.resolve("no").resolve("such").resolve("folder.md"));
        assertEquals(2, run.code());
        assertTrue(run.err().startsWith("the report cannot be written: "), run.err());
    }

    /** A long report on the screen would hide the word that the tables are not there. */
    @Test
    void printsNothingWhereAFileCannotBeWritten() throws Exception {
        Path file = Files.writeString(out.resolve("stands"), "a file where a folder is wanted");
        Cli run = report("--incident", "latest", "--csv", file.resolve("tables"));
        assertEquals(2, run.code());
        assertTrue(run.err().startsWith("the report cannot be written: "), run.err());
        assertEquals("", run.out());
    }
}
