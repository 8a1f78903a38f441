package bywash.tui.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Reads keys on a thread of its own, because only a blocking read notices that the other end is gone. */
final class KeyReader {
    private final BlockingQueue<KeyPress> keys = new LinkedBlockingQueue<>();
    private final Terminal terminal;

    KeyReader(Terminal terminal) {
        this.terminal = terminal;
    }

    void start() {
        Thread thread = new Thread(this::read, "keys");
        thread.setDaemon(true);
        thread.start();
    }

    private void read() {
        try {
            KeyStroke stroke = terminal.readInput();
            while (stroke != null && stroke.getKeyType() != KeyType.EOF) {
                keys.add(KeyPress.from(stroke));
                stroke = terminal.readInput();
            }
        } catch (IOException | RuntimeException e) {
            // The line is gone, or the terminal was closed under us: both end in the hang-up below.
        }
        keys.add(KeyPress.of(KeyPress.Kind.HANG_UP));
    }

    /** The next key, or null when none comes in time. */
    @Nullable
    KeyPress await(Duration patience) {
        try {
            return keys.poll(Math.max(0, patience.toNanos()), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return KeyPress.of(KeyPress.Kind.HANG_UP);
        }
    }
}
