package bywash.tui.attach;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;

/**
 * What a terminal sends to the watch.
 *
 * <pre>
 *   'k' length (2 bytes, big end first) bytes     keys as the terminal gave them
 *   's' columns (2 bytes) rows (2 bytes)          its size has changed
 * </pre>
 */
final class KeyFrames {
    private static final int MOST = 0xffff;

    /** Takes what a terminal sent. */
    interface Sink {
        void keys(byte[] bytes) throws IOException;

        void size(int columns, int rows);
    }

    private KeyFrames() {}

    static void keys(DataOutputStream out, byte[] bytes, int length) throws IOException {
        synchronized (out) {
            for (int from = 0; from < length; from += MOST) {
                int part = Math.min(MOST, length - from);
                out.writeByte('k');
                out.writeShort(part);
                out.write(bytes, from, part);
            }
            out.flush();
        }
    }

    static void size(DataOutputStream out, int columns, int rows) throws IOException {
        synchronized (out) {
            out.writeByte('s');
            out.writeShort(columns);
            out.writeShort(rows);
            out.flush();
        }
    }

    /** Reads until the other end is gone. */
    static void read(DataInputStream in, Sink sink) throws IOException {
        while (true) {
            int kind = in.read();
            if (kind < 0) {
                return;
            }
            try {
                if (kind == 's') {
                    int columns = in.readUnsignedShort();
                    sink.size(columns, in.readUnsignedShort());
                } else if (kind == 'k') {
                    byte[] bytes = new byte[in.readUnsignedShort()];
                    in.readFully(bytes);
                    sink.keys(bytes);
                } else {
                    throw new IOException("a frame of kind " + kind + " is not known");
                }
            } catch (EOFException e) {
                return;
            }
        }
    }
}
