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

/**
 * Reads keys on a thread of its own, because only a blocking read notices that the other end is gone. Keys that come faster
 * than anybody can type are lost beyond a bound.
 */
final class KeyReader {
    private static final int MOST_WAITING = 256;

    private final BlockingQueue<KeyPress> keys = new LinkedBlockingQueue<>(MOST_WAITING);
    private volatile boolean ended;
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
                keys.offer(KeyPress.from(stroke)); // lost where too many wait
                stroke = terminal.readInput();
            }
        } catch (IOException | RuntimeException e) {
            // The line is gone, or the terminal was closed under us: both end in the hang-up below.
        }
        ended = true;
        keys.offer(KeyPress.of(KeyPress.Kind.HANG_UP));
    }

    /** Whether more keys wait. */
    boolean more() {
        return !keys.isEmpty();
    }

    /** The next key, or null when none comes in time. */
    @Nullable
    KeyPress await(Duration patience) {
        try {
            KeyPress key = keys.poll(Math.max(0, patience.toNanos()), TimeUnit.NANOSECONDS);
            return key == null && ended ? KeyPress.of(KeyPress.Kind.HANG_UP) : key;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return KeyPress.of(KeyPress.Kind.HANG_UP);
        }
    }
}
