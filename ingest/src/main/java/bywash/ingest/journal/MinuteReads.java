package bywash.ingest.journal;

import bywash.ingest.journal.MinuteArchive.Kept;
import bywash.ingest.recording.RecordedLine;
import bywash.rules.site.Probe;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The questions to the kept minutes, those of {@link MinuteArchive} among them: SQLite answers each probe by probe, so that a year stays quick. */
final class MinuteReads {
    private static final String IN_SPAN =
            " FROM rollup WHERE probe = (SELECT id FROM topic WHERE name = ?1)" + " AND minute >= ?2 AND minute < ?3";
    private static final String OF_NAME = "SELECT minute, count, mean, low, high" + IN_SPAN + " ORDER BY minute";

    private static final String OF_PROBE = IN_SPAN + " AND low >= ?4 AND high <= ?5";
    private static final String SUM =
            "SELECT min(minute), sum(count), sum(mean * count) / sum(count), min(low), max(high)" + OF_PROBE;
    private static final String EACH = "SELECT minute, count, mean, low, high" + OF_PROBE + " ORDER BY minute";
    private static final String LAST = EACH + " DESC LIMIT 1";

    /** Entries with the time of the last message before each; of each log only what lies before it can have been first. */
    private static final String ENTRIES = "SELECT e.json, e.time,"
            + " (SELECT time FROM message m WHERE m.seq < e.seq ORDER BY m.seq DESC LIMIT 1),"
            + " (SELECT time FROM transition t WHERE t.seq < e.seq ORDER BY t.seq DESC LIMIT 1),"
            + " (SELECT time FROM state s WHERE s.seq < e.seq ORDER BY s.seq DESC LIMIT 1)"
            + " FROM entry e ORDER BY e.seq";

    private final Connection db;

    MinuteReads(Connection db) {
        this.db = db;
    }

    List<Kept> keptBefore(Instant before) throws SQLException {
        List<Kept> all = new ArrayList<>();
        long enteredAt = Long.MIN_VALUE;
        try (PreparedStatement p = db.prepareStatement(ENTRIES);
                ResultSet r = p.executeQuery()) {
            while (r.next()) {
                for (int column = 2; column <= 5; column++) {
                    enteredAt = r.getObject(column) == null ? enteredAt : Math.max(enteredAt, r.getLong(column));
                }
                long time = r.getLong(2);
                if (time < before.toEpochMilli()
                        && JournalReads.line(r.getString(1), time) instanceof RecordedLine.Entry entry) {
                    all.add(new Kept(entry.entry(), Instant.ofEpochMilli(enteredAt)));
                }
            }
        }
        return all;
    }

    @Nullable
    Instant firstMinute(Probe probe) throws SQLException {
        String sql =
                "SELECT minute FROM rollup WHERE probe = (SELECT id FROM topic WHERE name = ?) ORDER BY minute LIMIT 1";
        try (PreparedStatement p = db.prepareStatement(sql)) {
            p.setString(1, probe.id());
            try (ResultSet r = p.executeQuery()) {
                return r.next() ? Instant.ofEpochSecond(r.getLong(1) * 60) : null;
            }
        }
    }

    @Nullable
    Rollup lastMinute(Probe probe, Instant from, Instant to) throws SQLException {
        return one(LAST, probe, from, to);
    }

    @Nullable
    Rollup sum(Probe probe, Instant from, Instant to) throws SQLException {
        try (PreparedStatement p = bound(SUM, probe, from, to);
                ResultSet r = p.executeQuery()) {
            boolean some = r.next() && r.getLong(2) > 0;
            return some ? rollup(probe.id(), r) : null;
        }
    }

    void each(Probe probe, Instant from, Instant to, Consumer<Rollup> sink) throws SQLException {
        try (PreparedStatement p = bound(EACH, probe, from, to);
                ResultSet r = p.executeQuery()) {
            while (r.next()) {
                sink.accept(rollup(probe.id(), r));
            }
        }
    }

    /**
     * The minutes of every probe that begin in a span, oldest first, a day at a time so that memory stays flat. The join is
     * crossed so that SQLite goes probe by probe: it would read every minute of the year for each day.
     */
    void all(Instant from, Instant to, Consumer<Rollup> sink) throws SQLException {
        String sql = "SELECT minute, count, mean, low, high, name FROM topic CROSS JOIN rollup ON probe = id"
                + " WHERE minute >= ? AND minute < ? ORDER BY minute, name";
        long end = minute(to);
        try (PreparedStatement p = db.prepareStatement(sql)) {
            for (long day = minute(from); day < end; day += 1440) {
                p.setLong(1, day);
                p.setLong(2, Math.min(end, day + 1440));
                try (ResultSet r = p.executeQuery()) {
                    while (r.next()) {
                        sink.accept(rollup(r.getString(6), r));
                    }
                }
            }
        }
    }

    /** The minutes of one probe that begin in a span, oldest first, whatever their values. */
    List<Rollup> of(String probe, Instant from, Instant to) throws SQLException {
        List<Rollup> all = new ArrayList<>();
        try (PreparedStatement p = db.prepareStatement(OF_NAME)) {
            p.setString(1, probe);
            p.setLong(2, minute(from));
            p.setLong(3, minute(to));
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    all.add(rollup(probe, r));
                }
            }
        }
        return all;
    }

    private @Nullable Rollup one(String sql, Probe probe, Instant from, Instant to) throws SQLException {
        try (PreparedStatement p = bound(sql, probe, from, to);
                ResultSet r = p.executeQuery()) {
            return r.next() ? rollup(probe.id(), r) : null;
        }
    }

    private static Rollup rollup(String probe, ResultSet r) throws SQLException {
        Instant minute = Instant.ofEpochSecond(r.getLong(1) * 60);
        return new Rollup(probe, minute, r.getInt(2), r.getDouble(3), r.getDouble(4), r.getDouble(5));
    }

    private PreparedStatement bound(String sql, Probe probe, Instant from, Instant to) throws SQLException {
        PreparedStatement p = db.prepareStatement(sql);
        try {
            p.setString(1, probe.id());
            p.setLong(2, minute(from));
            p.setLong(3, minute(to));
            p.setDouble(4, probe.quantity().lowest());
            p.setDouble(5, probe.quantity().highest());
            return p;
        } catch (SQLException e) {
            p.close();
            throw e;
        }
    }

    /** The first minute that begins at a time or later. */
    private static long minute(Instant at) {
        return Math.floorDiv(at.getEpochSecond() + 59, 60);
    }
}
