package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A watch in a JVM of its own is killed at random moments: no entry and no alarm state that it showed is lost. */
class WatchKillTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    @TempDir
    Path dir;

    @Test
    @Timeout(180)
    void threeKillsLoseNothingThatWasShown() throws Exception {
        kill(3);
    }

    @Test
    @Tag("slow")
    @Timeout(7200)
    void aHundredKillsLoseNothingThatWasShown() throws Exception {
        kill(100);
    }

    private void kill(int times) throws Exception {
        SplittableRandom random = new SplittableRandom(815);
        List<String> shown = new ArrayList<>();
        for (int round = 0; round < times; round++) {
            Process watch = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx96m",
                            "-XX:+UseSerialGC",
                            "-XX:TieredStopAtLevel=1",
                            "-cp",
                            System.getProperty("java.class.path"),
                            Watch.class.getName(),
                            dir.toString())
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            try (BufferedReader said = watch.inputReader()) {
                int wanted = random.nextInt(3, 60);
                int heard = 0;
                for (String line = said.readLine(); line != null; line = said.readLine()) {
                    shown.add(line);
                    if (++heard == wanted) {
                        watch.toHandle().destroyForcibly(); // which leaves what it said to be read
                    }
                }
                assertTrue(heard >= wanted, "the watch ended by itself after " + heard);
            } finally {
                watch.destroyForcibly().waitFor();
            }
            check(shown);
        }
    }

    private void check(List<String> shown) throws Exception {
        List<String> kept = new ArrayList<>();
        Map<String, String> last = new TreeMap<>();
        Instant seen;
        try (JournalReader journal = JournalReader.open(dir, "larkfield")) {
            Instant end = T0.plusSeconds(100_000_000);
            kept.addAll(journal.transitions(T0, end));
            journal.entries(T0, end).forEach(e -> kept.add(e.entry().toString()));
            for (String line : journal.transitions(T0, end)) {
                last.put(field(line, "alarm") + " " + field(line, "subject"), field(line, "state"));
            }
            seen = Watch.lastSeen(dir);
        }
        List<String> lost = new ArrayList<>(shown);
        lost.removeAll(kept);
        assertEquals(List.of(), lost);
        last.values().removeIf("normal"::equals);
        Station again = Station.open(Larkfield.site(), dir, () -> seen);
        Map<String, String> now = new TreeMap<>();
        again.watch()
                .latest()
                .snapshot()
                .alarms()
                .forEach(a ->
                        now.put(a.kind().word() + " " + a.subject(), a.state().word()));
        again.watch().end();
        assertEquals(last, now);
    }

    private static String field(String json, String name) {
        String from = json.substring(json.indexOf("\"" + name + "\":\"") + name.length() + 4);
        return from.substring(0, from.indexOf('"'));
    }

    /** Oxygen falls and rises every two minutes of event time; somebody acknowledges and shelves; all changes are said. */
    static final class Watch {
        private Watch() {}

        static Instant lastSeen(Path dir) throws Exception {
            Instant[] last = {T0};
            try (JournalReader journal = JournalReader.open(dir, "larkfield")) {
                journal.lines(T0, T0.plusSeconds(100_000_000), line -> {
                    if (line.time().isAfter(last[0])) {
                        last[0] = line.time();
                    }
                });
            } catch (java.io.IOException e) {
                return T0; // the first watch of all
            }
            return last[0].plusSeconds(5);
        }

        public static void main(String[] arguments) throws Exception {
            Path dir = Path.of(arguments[0]);
            Instant[] now = {lastSeen(dir)};
            Station station = Station.open(Larkfield.site(), dir, () -> now[0]);
            station.outlets().add((t, line) -> System.out.println(line));
            for (int i = 0; ; i++) {
                now[0] = now[0].plusSeconds(10);
                String oxygen = now[0].getEpochSecond() / 120 % 2 == 0 ? "8" : "3";
                byte[] payload =
                        ("{\"oxygen\":{\"mgl\":" + oxygen + "." + i % 10 + "}}").getBytes(StandardCharsets.UTF_8);
                var kept = List.of(new Message(now[0], "larkfield/do", payload, 0, false));
                OperatorEntry entry = i % 7 == 0
                        ? new OperatorEntry.Acknowledge(now[0], "low-oxygen", "fish-tank")
                        : new OperatorEntry.Note(now[0], "note " + i);
                var done = station.watch().enter(entry);
                station.watch().step(kept);
                if (done.get()) {
                    System.out.println(entry);
                }
            }
        }
    }
}
