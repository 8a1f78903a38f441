package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.mqtt.MqttPublisher;
import bywash.ingest.recording.LineJson;
import bywash.ingest.recording.RecordedLine;
import bywash.samples.SampleRecordings;
import bywash.tui.demo.LoopbackBroker;
import bywash.tui.watch.JournalOfASample;
import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Recordings out of the journal and off a broker. */
@Timeout(60)
class RecordCommandTest {
    private static final List<Logger> QUIET = List.of(Logger.getLogger("io.moquette"), Logger.getLogger("io.netty"));

    @TempDir
    Path dir;

    @BeforeAll
    static void quiet() {
        QUIET.forEach(l -> l.setLevel(Level.OFF));
    }

    private static List<RecordedLine> lines(Path recording) throws Exception {
        List<RecordedLine> lines = new ArrayList<>();
        for (String line : Files.readAllLines(recording)) {
            lines.add(LineJson.fromJson(line));
        }
        return lines;
    }

    @Test
    void writesASpanOfTheJournalWhileTheWatchRuns() throws Exception {
        Path state = dir.resolve("state");
        try (var journal = new JournalOfASample(state, SampleRecordings.DECLARED_TOP_UP, List.of())) {
            Path file = dir.resolve("span.jsonl");
            Cli run = Cli.run(
                    "record", file, "--state", state, "--from", "2026-05-04T07:00:00Z", "--to", "2026-05-04T07:40:00Z");
            assertEquals(0, run.code(), run.err());
            List<RecordedLine> lines = lines(file);
            assertTrue(lines.size() > 700, "lines: " + lines.size());
            assertTrue(lines.stream()
                    .allMatch(l -> !l.time().toString().startsWith("2026-05-04T06")
                            && l.time().toString().compareTo("2026-05-04T07:40") < 0));
            assertTrue(lines.stream().anyMatch(RecordedLine.Entry.class::isInstance));
            Cli empty = Cli.run("record", dir.resolve("none.jsonl"), "--state", state, "--to", "2020-01-01T00:00:00Z");
            assertEquals(4, empty.code());
            assertTrue(
                    empty.err()
                            .startsWith("nothing is on record from then to then; the journal reaches from 2026-05-04T"),
                    empty.err());
            assertFalse(Files.exists(dir.resolve("none.jsonl")));
            assertTrue(journal.station().record().fault().isEmpty());
        }
    }

    @Test
    void neverWritesOverAFileAndSaysWhatIsWrong() throws Exception {
        Path state = dir.resolve("state");
        new JournalOfASample(state, SampleRecordings.PROBE_SILENT, List.of()).close();
        Path there = Files.writeString(dir.resolve("there.jsonl"), "mine");
        Cli run = Cli.run("record", there, "--state", state);
        assertEquals(4, run.code());
        assertEquals(there + " stands already; name a new file\n", run.err());
        assertEquals("mine", Files.readString(there));
        Cli time = Cli.run("record", dir.resolve("x.jsonl"), "--state", state, "--from", "dawn");
        assertEquals(2, time.code());
        assertEquals("--from dawn: no time; give one such as 2026-05-04T06:00:00Z\n", time.err());
        Path lost = dir.resolve("no-folder/x.jsonl");
        assertEquals(
                lost + ": its folder is not there; make it, or name another\n",
                Cli.run("record", lost, "--state", state).err());
        assertEquals(
                lost + ": its folder is not there; make it, or name another\n",
                Cli.run("backup", lost, "--state", state).err());
        Cli none = Cli.run("record", dir.resolve("x.jsonl"), "--state", dir.resolve("nowhere"));
        assertEquals(4, none.code());
        assertTrue(none.err().startsWith("no journal in "), none.err());
    }

    /** In a program of its own, which a signal ends, against a broker in this one. */
    @Test
    void writesWhatComesInUntilItIsTold() throws Exception {
        try (LoopbackBroker broker = new LoopbackBroker()) {
            String text = Files.readString(JournalOfASample.SITE)
                    .replaceAll(
                            "(?m)^broker:.*$",
                            "broker: {url: \"mqtt://127.0.0.1:" + broker.url().getPort() + "\"}");
            Path site = Files.writeString(dir.resolve("site.yaml"), text);
            Path file = dir.resolve("live.jsonl");
            ProcessBuilder program = new ProcessBuilder(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp",
                    System.getProperty("java.class.path"),
                    Main.class.getName(),
                    "record",
                    file.toString(),
                    "--site",
                    site.toString());
            program.environment().put("XDG_STATE_HOME", dir.toString());
            Process record = program.start();
            try (BufferedReader said = record.errorReader(StandardCharsets.UTF_8);
                    MqttPublisher publisher = new MqttPublisher(broker.url())) {
                List<String> heard = new ArrayList<>();
                for (String line = said.readLine(); !connected(line); line = said.readLine()) {
                    heard.add(line);
                    assertTrue(line != null, "it ended: " + heard);
                }
                for (int i = 0; i < 5; i++) {
                    publisher.publish("larkfield/orp", ("30" + i).getBytes(StandardCharsets.UTF_8));
                }
                publisher.publish("somebody/else", new byte[] {1});
                publisher.publish("larkfield/do", new byte[] {(byte) 0xff});
                while (Files.readAllLines(file).size() < 6) {
                    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
                }
                record.destroy();
                assertTrue(record.waitFor(10, TimeUnit.SECONDS));
            } finally {
                record.destroyForcibly();
            }
            List<RecordedLine> lines = lines(file);
            assertEquals(6, lines.size());
            List<String> payloads = lines.stream()
                    .map(l -> new String(((RecordedLine.Message) l).payload(), StandardCharsets.ISO_8859_1))
                    .toList();
            assertEquals(List.of("300", "301", "302", "303", "304", "\u00ff"), payloads);
            String log = Files.readString(dir.resolve("bywash/bywash.log.0"));
            assertTrue(log.contains("STOPPED"), "what is said after the signal is on the log: " + log);
            assertFalse(Files.exists(dir.resolve("bywash/bywash.log.lck")), "and the log is closed");
        }
    }

    private static boolean connected(String line) {
        return line != null && line.startsWith("connected");
    }
}
