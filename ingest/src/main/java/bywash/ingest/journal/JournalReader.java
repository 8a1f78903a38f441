package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Reads a site's journal, also beside a watch that writes it. For one thread. */
public final class JournalReader implements AutoCloseable {
    private final Path file;
    private final Connection db;

    private JournalReader(Path file, Connection db) {
        this.file = file;
        this.db = db;
    }

    /**
     * Opens for reading.
     *
     * @throws IOException in words for the grower
     */
    public static JournalReader open(Path dir, String siteId) throws IOException {
        Path file = dir.resolve(siteId + ".db");
        if (!Files.exists(file)) {
            throw new IOException("no journal of " + siteId + " in " + dir + "; give --state the folder of its watch");
        }
        try {
            return new JournalReader(file, JournalFile.reading(file));
        } catch (SQLException e) {
            throw new IOException("journal " + file + " cannot be read: " + e.getMessage(), e);
        }
    }

    private interface Question<T> {
        T of(JournalReads reads) throws SQLException;
    }

    private <T> T ask(Question<T> question) throws IOException {
        try {
            return question.of(new JournalReads(db));
        } catch (SQLException e) {
            throw new IOException("journal " + file + " cannot be read: " + e.getMessage(), e);
        }
    }

    /**
     * Messages, entries and states of a span, in the order they were stored.
     *
     * @return lines that could not be read and were passed over
     */
    public int lines(Instant from, Instant to, Consumer<RecordedLine> sink) throws IOException {
        return ask(r -> r.lines(from, to, sink));
    }

    /** What the grower entered in a span. */
    public List<RecordedLine.Entry> entries(Instant from, Instant to) throws IOException {
        List<RecordedLine.Entry> all = new ArrayList<>();
        return ask(r -> {
            r.entries(from, to, all::add);
            return all;
        });
    }

    /** The alarm lines of a span. */
    public List<String> transitions(Instant from, Instant to) throws IOException {
        return ask(r -> r.transitions(from, to));
    }

    public TrendHistory history() {
        return new JournalHistory(file);
    }

    @Override
    public void close() throws IOException {
        try {
            db.close();
        } catch (SQLException e) {
            throw new IOException("journal " + file + " cannot be closed", e);
        }
    }
}
