package bywash.tui.terminal;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Pattern;

/** A tmux server of its own with one shell in it: types keys, reads the screen. */
final class Tmux implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(90);

    private final Path socket;

    Tmux(Path folder, int columns, int rows) throws IOException {
        socket = folder.resolve("tmux");
        run(
                "new-session",
                "-d",
                "-x",
                String.valueOf(columns),
                "-y",
                String.valueOf(rows),
                "env -u NO_COLOR -u COLORTERM LC_ALL=C.UTF-8 TERM=xterm-256color PS1='$ ' sh");
    }

    static boolean installed() {
        try {
            return new ProcessBuilder("tmux", "-V").start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Keys by tmux's names: Enter, Escape, Down, C-c; else as typed. */
    void keys(String... keys) throws IOException {
        List<String> words = new ArrayList<>(List.of("send-keys"));
        words.addAll(List.of(keys));
        run(words.toArray(String[]::new));
    }

    /** A command line for the shell. */
    void line(String text) throws IOException {
        run("send-keys", "-l", text);
        keys("Enter");
    }

    void resize(int columns, int rows) throws IOException {
        run("resize-window", "-x", String.valueOf(columns), "-y", String.valueOf(rows));
    }

    String screen() throws IOException {
        return run("capture-pane", "-p");
    }

    /** Waits until the screen shows what is looked for, and gives the screen. */
    String await(String pattern) throws IOException {
        Pattern wanted = Pattern.compile(pattern, Pattern.MULTILINE);
        long end = System.nanoTime() + PATIENCE.toNanos();
        String seen = "";
        while (System.nanoTime() < end) {
            seen = screen();
            if (wanted.matcher(seen).find()) {
                return seen;
            }
            LockSupport.parkNanos(50_000_000);
        }
        return fail("not seen: " + pattern + "\n" + seen);
    }

    private String run(String... words) throws IOException {
        List<String> command = new ArrayList<>(List.of("tmux", "-u", "-f", "/dev/null", "-S", socket.toString()));
        command.addAll(List.of(words));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (!process.waitFor(20, TimeUnit.SECONDS) || process.exitValue() != 0) {
                throw new IOException(command + ": " + out);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
        return out;
    }

    @Override
    public void close() throws IOException {
        run("kill-server");
    }
}
