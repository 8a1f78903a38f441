package bywash.tui.attach;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;

/** Bytes from one thread to another, bounded; whoever types faster than the watch acts loses the surplus. */
final class KeyPipe extends InputStream {
    private final byte[] ring = new byte[4096];
    private int first;
    private int size;
    private boolean ended;

    synchronized void put(byte[] bytes) {
        for (byte b : bytes) {
            if (size < ring.length) {
                ring[(first + size) % ring.length] = b;
                size++;
            }
        }
        notifyAll();
    }

    /** No more will come. */
    synchronized void end() {
        ended = true;
        notifyAll();
    }

    @Override
    public synchronized int read() throws IOException {
        while (size == 0 && !ended) {
            try {
                wait();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new InterruptedIOException();
            }
        }
        if (size == 0) {
            return -1;
        }
        int value = ring[first] & 0xff;
        first = (first + 1) % ring.length;
        size--;
        return value;
    }

    @Override
    public synchronized int read(byte[] into, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        int value = read();
        if (value < 0) {
            return -1;
        }
        int count = 0;
        into[offset + count++] = (byte) value;
        while (count < length && size > 0) {
            into[offset + count++] = (byte) read();
        }
        return count;
    }

    @Override
    public synchronized int available() {
        return size;
    }

    @Override
    public void close() {
        end();
    }
}
