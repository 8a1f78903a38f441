package bywash.tui.screen;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.atomic.AtomicLong;

/** Counts the bytes that go to the terminal. */
final class CountingOutput extends FilterOutputStream {
    private final AtomicLong count = new AtomicLong();

    CountingOutput(OutputStream out) {
        super(out);
    }

    long count() {
        return count.get();
    }

    @Override
    public void write(int b) throws IOException {
        out.write(b);
        count.incrementAndGet();
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        out.write(bytes, offset, length);
        count.addAndGet(length);
    }
}
