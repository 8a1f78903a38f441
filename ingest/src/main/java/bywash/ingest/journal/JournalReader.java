package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.site.Probe;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads a site's journal, also beside a watch that writes it. For one thread. */
public final class JournalReader implements AutoCloseable, MinuteArchive {
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

    /** How the feed and the watch changed in a span. */
    public List<RecordedLine> states(Instant from, Instant to) throws IOException {
        return ask(r -> r.states(from, to));
    }

    /** The site file as the last watch read it; null where none was kept. */
    public @Nullable String site() throws IOException {
        return ask(r -> Optional.ofNullable(r.site())).orElse(null);
    }

    /** The time of the first message still kept; null where there is none. */
    public @Nullable Instant firstMessage() throws IOException {
        return ask(r -> Optional.ofNullable(r.firstMessage())).orElse(null);
    }

    /** The first time it tells of; null where it is empty. */
    public @Nullable Instant firstSeen() throws IOException {
        return ask(r -> Optional.ofNullable(r.firstSeen())).orElse(null);
    }

    /** How far the last watch came; null where none has run. */
    public @Nullable Instant lastSeen() throws IOException {
        return ask(r -> Optional.ofNullable(r.lastSeen())).orElse(null);
    }

    /** The minutes of every probe that begin in a span, oldest first. */
    public void minutes(Instant from, Instant to, Consumer<Rollup> sink) throws IOException {
        ask(r -> {
            new MinuteReads(db).all(from, to, sink);
            return 0;
        });
    }

    private interface MinuteQuestion<T> {
        T of(MinuteReads reads) throws SQLException;
    }

    private <T> T askMinutes(MinuteQuestion<T> question) {
        try {
            return ask(r -> question.of(new MinuteReads(db)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public List<Kept> keptBefore(Instant before) {
        return askMinutes(m -> m.keptBefore(before));
    }

    @Override
    public Optional<Instant> firstMinute(Probe probe) {
        return askMinutes(m -> Optional.ofNullable(m.firstMinute(probe)));
    }

    @Override
    public Optional<Rollup> lastMinute(Probe probe, Instant from, Instant to) {
        return askMinutes(m -> Optional.ofNullable(m.lastMinute(probe, from, to)));
    }

    @Override
    public Optional<Rollup> sum(Probe probe, Instant from, Instant to) {
        return askMinutes(m -> Optional.ofNullable(m.sum(probe, from, to)));
    }

    @Override
    public void each(Probe probe, Instant from, Instant to, Consumer<Rollup> sink) {
        askMinutes(m -> {
            m.each(probe, from, to, sink);
            return 0;
        });
    }

    /** The alarm lines of a span. */
    public List<String> transitions(Instant from, Instant to) throws IOException {
        return ask(r -> r.transitions(from, to));
    }

    /**
     * Copies the whole journal, as it stands at this moment, to a new file that is its owner's alone. A watch goes on writing
     * meanwhile.
     *
     * @throws IOException in words: the file stands already, or cannot be written
     */
    public void copyTo(Path target) throws IOException {
        if (Files.exists(target)) {
            throw new IOException(target + " stands already; name a new file");
        }
        JournalFile.createOwned(target);
        try {
            JournalFile.copy(db, target);
        } catch (SQLException e) {
            Files.deleteIfExists(target);
            throw new IOException("the copy " + target + " was not made: " + e.getMessage(), e);
        }
    }

    /** The ids of the sites with a journal in a folder. */
    public static List<String> sites(Path dir) {
        try (Stream<Path> all = Files.list(dir)) {
            return all.map(p -> p.getFileName().toString())
                    .filter(name -> name.endsWith(".db"))
                    .map(name -> name.substring(0, name.length() - 3))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
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
