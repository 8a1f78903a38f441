package bywash.tui.screen;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * A terminal at the other end of a line: its keys, its screen, and its size as it changes. The size may be told before or
 * while a sitting runs, from any thread.
 */
public final class RemoteLine {
    private final InputStream keys;
    private final OutputStream screen;
    private int columns;
    private int rows;
    private @Nullable BiConsumer<Integer, Integer> listener;

    /** @param columns from 1; @param rows from 1 */
    public RemoteLine(InputStream keys, OutputStream screen, int columns, int rows) {
        this.keys = keys;
        this.screen = screen;
        this.columns = atLeastOne(columns);
        this.rows = atLeastOne(rows);
    }

    private static int atLeastOne(int value) {
        return Math.max(1, Math.min(1000, value));
    }

    InputStream keys() {
        return keys;
    }

    OutputStream screen() {
        return screen;
    }

    synchronized int columns() {
        return columns;
    }

    synchronized int rows() {
        return rows;
    }

    /** The terminal has another size now. */
    public void resize(int newColumns, int newRows) {
        BiConsumer<Integer, Integer> told;
        synchronized (this) {
            columns = atLeastOne(newColumns);
            rows = atLeastOne(newRows);
            told = listener;
        }
        if (told != null) {
            told.accept(atLeastOne(newColumns), atLeastOne(newRows));
        }
    }

    synchronized void onResize(BiConsumer<Integer, Integer> newListener) {
        listener = newListener;
    }

    void close() throws IOException {
        screen.close();
    }
}
