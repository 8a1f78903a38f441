package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.Priority;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class CommandOutletTest {
    private static final CommandOutlet.Patience SHORT =
            patience(Duration.ofSeconds(1), Duration.ofMillis(1), Duration.ofMillis(1));

    private static CommandOutlet.Patience patience(Duration each, Duration... pauses) {
        return new CommandOutlet.Patience(each, List.of(pauses), Duration.ofSeconds(2));
    }

    @TempDir
    Path dir;

    private static AlarmTransition change() {
        return new AlarmTransition(
                Instant.EPOCH,
                AlarmKind.LOW_OXYGEN,
                "fish-tank",
                AlarmState.UNACKNOWLEDGED,
                Priority.CRITICAL,
                "i",
                "m",
                Map.of());
    }

    private static void until(java.util.function.BooleanSupplier done) {
        while (!done.getAsBoolean()) {
            Thread.yield();
        }
    }

    @Test
    void getsTheLineOnStandardInputAndWhatItIsInTheEnvironment() throws Exception {
        Path out = dir.resolve("out");
        String command = "{ cat; echo $BYWASH_ALARM $BYWASH_SUBJECT $BYWASH_STATE $BYWASH_PRIORITY; } > " + out
                + ".part; mv " + out + ".part " + out;
        try (CommandOutlet outlet = new CommandOutlet(command, SHORT)) {
            outlet.accept(change(), "{\"a\":1}");
            until(() -> Files.exists(out));
            assertEquals("{\"a\":1}\nlow-oxygen fish-tank unacknowledged critical\n", Files.readString(out));
            assertEquals(0, outlet.failed());
        }
    }

    @Test
    void isTriedAgainWhenItFails() throws Exception {
        Path tries = dir.resolve("tries");
        String command = "echo x >> " + tries + "; test $(wc -l < " + tries + ") = 3";
        try (CommandOutlet outlet = new CommandOutlet(command, SHORT)) {
            outlet.accept(change(), "line");
            until(() -> lines(tries) == 3);
        }
        assertEquals(3, lines(tries));
    }

    private static int lines(Path file) {
        try {
            return Files.exists(file) ? Files.readAllLines(file).size() : 0;
        } catch (java.io.IOException e) {
            return 0;
        }
    }

    @Test
    void isGivenUpInWordsAfterThreeTriesAndTheNextLineGoesOn() throws Exception {
        Path out = dir.resolve("out");
        try (CommandOutlet outlet = new CommandOutlet("grep -q good && touch " + out, SHORT)) {
            outlet.accept(change(), "bad");
            until(() -> outlet.failed() == 1);
            assertEquals("notify command: it ended with 1", outlet.trouble());
            outlet.accept(change(), "good");
            until(() -> Files.exists(out) && outlet.trouble().isEmpty());
        }
    }

    @Test
    void isEndedWhenItHangsAndNobodyWaitsForIt() throws Exception {
        Path pid = dir.resolve("pid");
        try (CommandOutlet outlet =
                new CommandOutlet("echo $$ > " + pid + "; sleep 100", patience(Duration.ofMillis(500)))) {
            long began = System.nanoTime();
            for (int i = 0; i < 600; i++) {
                outlet.accept(change(), "line");
            }
            assertTrue(System.nanoTime() - began < 60_000_000_000L, "waiting for each would take 300 s");
            assertTrue(outlet.failed() >= 90, "beyond 500 they are dropped and counted");
            until(() -> outlet.trouble().contains("longer than") && lines(pid) == 1);
        }
        long shell = Long.parseLong(Files.readString(pid).strip());
        until(() -> ProcessHandle.of(shell).map(p -> !p.isAlive()).orElse(true));
    }

    @Test
    void theEndWaitsForNoPauseAndTriesOnceMoreAtOnce() throws Exception {
        Path tries = dir.resolve("tries");
        CommandOutlet outlet = new CommandOutlet(
                "cat >> " + tries + "; exit 1",
                new CommandOutlet.Patience(
                        Duration.ofSeconds(20),
                        List.of(Duration.ofDays(1), Duration.ofDays(1)),
                        Duration.ofSeconds(20)));
        outlet.accept(change(), "first");
        outlet.accept(change(), "second");
        outlet.close();
        assertEquals(List.of("first", "first", "second", "second"), Files.readAllLines(tries));
        assertEquals(2, outlet.failed());
    }
}
