package bywash.ingest.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Where the record had come to when something last had to be durable, noted in the lock file beside the journal. SQLite drops
 * the rest of a write-ahead log that is spoilt, and all of one that was taken away, without a word; a journal that ends before
 * the note has lost lines in that way. The note is written when the lines are synced and is not synced itself: after a power
 * cut it may be an older one, and then says less, but never too much.
 *
 * @param seq of the last line
 * @param at when it was kept
 */
record LastKept(long seq, Instant at) {
    private static final int LENGTH = 64;
    private static final Pattern FORM = Pattern.compile("last line (\\d{1,16}) at (\\d{1,15}) ms *\\n");
    private static final DateTimeFormatter WORDS =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

    /** Empty where there is none, or none that can be read. */
    static Optional<LastKept> read(FileChannel file) {
        ByteBuffer bytes = ByteBuffer.allocate(LENGTH);
        try {
            file.read(bytes, 0);
        } catch (IOException e) {
            return Optional.empty();
        }
        Matcher m = FORM.matcher(new String(bytes.array(), 0, bytes.position(), StandardCharsets.US_ASCII));
        return m.matches()
                ? Optional.of(
                        new LastKept(Long.parseLong(m.group(1)), Instant.ofEpochMilli(Long.parseLong(m.group(2)))))
                : Optional.empty();
    }

    /** In place of the one before. */
    void write(FileChannel file) throws IOException {
        String line = String.format(Locale.ROOT, "last line %d at %d ms", seq, at.toEpochMilli());
        String padded = line + " ".repeat(LENGTH - 1 - line.length()) + "\n";
        file.write(ByteBuffer.wrap(padded.getBytes(StandardCharsets.US_ASCII)), 0);
    }

    /**
     * What is missing from a journal that ends before this, for the grower.
     *
     * @param last seq of its last line, 0 where it is empty
     * @param seen how far it goes; null where it is empty
     */
    JournalState missing(long last, @Nullable Instant seen, Path path) {
        long lines = seq - last;
        String span = seen == null ? "all up to " + WORDS.format(at) : WORDS.format(seen) + " to " + WORDS.format(at);
        String many = lines == 1 ? "1 LINE" : lines + " LINES";
        return new JournalState(
                true,
                "JOURNAL HAS LOST " + many + ", " + span,
                "journal " + path + " ends before what had been kept in it: " + many.toLowerCase(Locale.ROOT)
                        + " (messages, entries, alarm lines) missing, " + span
                        + ". Its file or the -wal file beside it was damaged, taken away or replaced by an older one."
                        + " Enter again what you entered then");
    }
}
