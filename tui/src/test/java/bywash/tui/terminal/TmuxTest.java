package bywash.tui.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.command.Main;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The program in a real terminal: a replay driven by keys through every page, and the terminal put back after it. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class TmuxTest {
    private static final String RECORDING = "../sample-feeds/recordings/valve-open.jsonl.gz";
    private static final String SITE = "../sample-feeds/sites/larkfield.yaml";

    @TempDir
    Path folder;

    private Tmux tmux;

    @BeforeEach
    void start() throws IOException {
        if (!Tmux.installed()) {
            System.err.println("SKIPPED: tmux is not installed; the program was not tried on a real terminal");
            Assumptions.abort("tmux is not installed");
        }
        tmux = new Tmux(folder, 80, 24);
        tmux.line("cd " + Path.of("").toAbsolutePath());
        tmux.line("stty -a > " + folder.resolve("before"));
    }

    @AfterEach
    void stop() throws IOException {
        if (tmux != null) {
            tmux.close();
        }
    }

    /** Starts the replay; when it ends, the shell writes the terminal's settings and the exit code. */
    private void replay() throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        Path script = folder.resolve("run.sh");
        Files.writeString(
                script,
                String.join(
                        "\n",
                        "echo $$ > " + folder.resolve("pid"),
                        "exec " + java + " -XX:TieredStopAtLevel=1 -cp '" + classes + "' " + Main.class.getName()
                                + " replay " + RECORDING + " --site " + SITE + " --speed 1",
                        ""));
        tmux.line("clear; sh " + script + "; echo code=$?; stty -a > " + folder.resolve("after") + "; echo put-back");
        tmux.await("^WATER");
    }

    private void assertPutBack(int code) throws IOException {
        tmux.await("^put-back");
        assertTrue(tmux.screen().contains("code=" + code), tmux.screen());
        assertEquals(Files.readString(folder.resolve("before")), Files.readString(folder.resolve("after")));
    }

    @Test
    void everyPageIsReachedByKeysAndTheTerminalIsPutBack() throws IOException {
        replay();
        tmux.keys("j");
        String incident = tmux.await("^!! Water nobody declared is entering sump");
        assertTrue(incident.contains("DO NOW Shut the valve"), incident);
        tmux.await("replay PAUSED");
        tmux.keys("Enter");
        tmux.await("^ALARM unplanned-inflow sump");
        tmux.keys("a", "a");
        tmux.await("acknowledged");
        tmux.keys("Escape");
        tmux.await("acked");
        String[][] pages = {
            {"g", "^TRENDS"},
            {"2", "TRENDS +day"},
            {"l", "^LOG"},
            {"m", "^TESTS"},
            {"n", "^NEW ENTRY"},
            {"e", "^NO TOP-UP"},
            {"t", "^TOP-UP"},
            {"r", "^RESPONSE SHEET"},
            {"b", "^BATCHES"},
            {"w", "^THE WAY BACK|^WAY BACK|^RECOVERY"},
            {"x", "^CHLORINE"},
            {"s", "^STOCK"},
            {"f", "^FEED AND NITROGEN"},
            {"c", "^PROBE CARE"},
            {"i", "^REPLAY"},
            {"p", "^PAGES"},
            {"h", "^KEYS"},
        };
        for (String[] page : pages) {
            tmux.keys(page[0]);
            tmux.await(page[1]);
        }
        tmux.keys("n");
        tmux.await("^NEW ENTRY");
        tmux.keys("Down", "Enter");
        tmux.await("^FEED GIVEN");
        tmux.keys("o");
        tmux.await("^WATER");
        tmux.keys("q");
        tmux.await("^LEAVE");
        tmux.keys("y");
        assertPutBack(0);
    }

    @Test
    void aResizeRedrawsAtOnceAndASmallScreenStillShowsTheAlarm() throws IOException {
        replay();
        tmux.keys("j");
        tmux.await("^!! Water nobody declared");
        tmux.resize(50, 15);
        String small = tmux.await("unplanned-inflow sump +new");
        assertFalse(small.contains("WATER"), small);
        tmux.resize(120, 40);
        tmux.await("^LEVELS");
        tmux.resize(80, 24);
        tmux.await("^WATER.*30 min ──$");
        tmux.keys("C-c");
        assertPutBack(0);
    }

    @Test
    void aSignalPutsTheTerminalBack() throws IOException {
        replay();
        long pid = Long.parseLong(Files.readString(folder.resolve("pid")).strip());
        ProcessHandle.of(pid).orElseThrow().destroy();
        assertPutBack(143);
    }

    @Test
    void aDroppedLineEndsTheProgram() throws Exception {
        replay();
        long pid = Long.parseLong(Files.readString(folder.resolve("pid")).strip());
        ProcessHandle program = ProcessHandle.of(pid).orElseThrow();
        tmux.close();
        program.onExit().get(60, TimeUnit.SECONDS);
        assertFalse(program.isAlive());
        tmux = new Tmux(folder, 80, 24);
    }

    @Test
    void withoutColourOrUnicodeThePictureIsTheSameInAscii() throws IOException {
        tmux.line("export NO_COLOR=1 LC_ALL=C");
        replay();
        String ascii = tmux.await("^WATER ----");
        assertTrue(ascii.chars().allMatch(c -> c < 0x7f), ascii);
        tmux.keys("C-c");
        assertPutBack(0);
    }

    @Test
    void aDumbTerminalIsRefusedInWords() throws IOException {
        tmux.line("export TERM=dumb");
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        Path script = folder.resolve("run.sh");
        Files.writeString(
                script,
                "exec " + java + " -cp '" + classes + "' " + Main.class.getName() + " replay " + RECORDING + " --site "
                        + SITE + "\n");
        tmux.line("clear; sh " + script + "; echo code=$?");
        String said = tmux.await("^code=2");
        assertTrue(said.contains("this terminal cannot be drawn on"), said);
    }
}
