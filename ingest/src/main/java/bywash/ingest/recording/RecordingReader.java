package bywash.ingest.recording;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;

/**
 * Reads a recording line by line, plain or gzip (told apart by the first two bytes). Memory stays flat at any length. Broken
 * lines are reported and skipped; gzip data that end early or are damaged are reported, and what came before is kept.
 */
public final class RecordingReader implements Closeable {
    private static final int CHUNK = 1 << 16;

    private final InputStream in;
    private final BrokenLines report;
    private final LineParser parser = new LineParser();
    private byte[] buffer = new byte[4 * CHUNK];
    private int start;
    private int end;
    private boolean ended;
    private boolean damaged;
    private long lineNumber;
    private long broken;

    /**
     * Reads from a stream.
     *
     * @param in closed with this reader
     */
    public RecordingReader(InputStream in, BrokenLines report) throws IOException {
        this.report = report;
        this.in = unzipped(in);
    }

    public static RecordingReader open(Path file, BrokenLines report) throws IOException {
        InputStream in = Files.newInputStream(file);
        try {
            return new RecordingReader(in, report);
        } catch (IOException | RuntimeException e) {
            in.close();
            throw e;
        }
    }

    private static InputStream unzipped(InputStream in) throws IOException {
        PushbackInputStream peek = new PushbackInputStream(in, 2);
        byte[] magic = new byte[2];
        int n = peek.readNBytes(magic, 0, 2);
        peek.unread(magic, 0, n);
        boolean gzip = n == 2 && magic[0] == (byte) 0x1f && magic[1] == (byte) 0x8b;
        return gzip ? new LateGzip(peek) : peek;
    }

    /** Returns the next line that can be read, or null at the end. */
    public @Nullable RecordedLine next() throws IOException {
        while (true) {
            int newline = findNewline();
            if (newline < 0) {
                return null;
            }
            lineNumber++;
            int from = start;
            int length = newline - start;
            start = Math.min(newline + 1, end);
            if (length > JsonLines.LONGEST_LINE) {
                refuse("the line is longer than 1 MB", "at most 1,000,000 bytes a line");
            } else if (!blank(from, length)) {
                try {
                    return parser.parse(buffer, from, length);
                } catch (BrokenEntry e) {
                    refuse(e.what(), e.right());
                }
            }
        }
    }

    /** Lines seen so far, broken and empty ones too. */
    public long lines() {
        return lineNumber;
    }

    /** Lines reported so far. */
    public long brokenLines() {
        return broken;
    }

    /** Where the next line ends; -1 at the end of the recording. A line too long is cut down while it is looked at. */
    private int findNewline() throws IOException {
        int at = start;
        while (true) {
            for (; at < end; at++) {
                if (buffer[at] == '\n') {
                    return at;
                }
            }
            if (ended) {
                return lastLine();
            }
            int done = at - start;
            if (done > JsonLines.LONGEST_LINE) {
                end = start + JsonLines.LONGEST_LINE + 1;
                done = end - start;
            }
            fill();
            at = start + done;
        }
    }

    private int lastLine() {
        if (damaged) {
            damaged = false;
            start = end;
            lineNumber++;
            refuse("the gzip data end too early or are damaged", "a whole .gz; the lines before are kept");
            lineNumber--;
        }
        return start < end ? end : -1;
    }

    private void fill() throws IOException {
        if (start > 0) {
            System.arraycopy(buffer, start, buffer, 0, end - start);
            end -= start;
            start = 0;
        }
        if (buffer.length - end < CHUNK) {
            buffer = Arrays.copyOf(buffer, buffer.length * 2);
        }
        int n;
        try {
            n = in.read(buffer, end, buffer.length - end);
        } catch (EOFException | ZipException e) {
            damaged = true;
            n = -1;
        }
        if (n < 0) {
            ended = true;
        } else {
            end += n;
        }
    }

    private boolean blank(int from, int length) {
        for (int i = from; i < from + length; i++) {
            if (buffer[i] > ' ' || buffer[i] < 0) {
                return false;
            }
        }
        return true;
    }

    private void refuse(String what, String right) {
        broken++;
        report.broken(lineNumber, what, right);
    }

    @Override
    public void close() throws IOException {
        in.close();
    }

    /** Reads the gzip header with the first read, so that a damaged one is met where the others are. */
    private static final class LateGzip extends InputStream {
        private final InputStream raw;
        private @Nullable GZIPInputStream gzip;

        LateGzip(InputStream raw) {
            this.raw = raw;
        }

        private GZIPInputStream gzip() throws IOException {
            GZIPInputStream open = gzip;
            if (open == null) {
                open = new GZIPInputStream(raw, CHUNK);
                gzip = open;
            }
            return open;
        }

        @Override
        public int read() throws IOException {
            return gzip().read();
        }

        @Override
        public int read(byte[] target, int offset, int length) throws IOException {
            return gzip().read(target, offset, length);
        }

        @Override
        public void close() throws IOException {
            raw.close();
        }
    }
}
