package bywash.ingest.journal;

import bywash.ingest.feed.EventTimeOrder;
import bywash.ingest.recording.BrokenEntry;
import bywash.ingest.recording.LineJson;
import bywash.ingest.recording.RecordedLine;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The questions to the logs, for the watch that writes them and for whoever reads beside it. */
final class JournalReads {
    private static final Logger LOG = LoggerFactory.getLogger(JournalReads.class);
    private static final String LINES =
            "SELECT seq, time, topic, flags, payload, NULL FROM message WHERE seq >= ?1 AND time >= ?2 AND time < ?3"
                    + " UNION ALL SELECT seq, time, NULL, NULL, NULL, json FROM entry WHERE time >= ?2 AND time < ?3"
                    + " UNION ALL SELECT seq, time, NULL, NULL, NULL, json FROM state WHERE time >= ?2 AND time < ?3"
                    + " ORDER BY seq";
    /** A change at a time is decided when the watch is past that time by the lateness. */
    private static final long PAST_CHANGE_MS = EventTimeOrder.DEFAULT_LATENESS.toMillis() + 1;

    private static final String LAST = "SELECT max(ifnull((SELECT time FROM message ORDER BY seq DESC LIMIT 1), 0),"
            + " ifnull((SELECT time FROM entry ORDER BY seq DESC LIMIT 1), 0),"
            + " ifnull((SELECT time FROM state ORDER BY seq DESC LIMIT 1), 0),"
            + " ifnull((SELECT time FROM transition ORDER BY seq DESC LIMIT 1), 0) + " + PAST_CHANGE_MS + ","
            + " ifnull((SELECT time FROM alive), 0))";

    private final Connection db;

    JournalReads(Connection db) {
        this.db = db;
    }

    /** The first message of this time or later, near enough: times rise with seq but for a clock that was set back. */
    long seqAt(Instant from) throws SQLException {
        long low = Math.max(0, number("SELECT ifnull(min(seq), 0) FROM message"));
        long high = number("SELECT ifnull(max(seq), -1) FROM message") + 1;
        try (PreparedStatement p = db.prepareStatement("SELECT seq, time FROM message WHERE seq >= ? LIMIT 1")) {
            while (low < high) {
                long middle = low + (high - low) / 2;
                p.setLong(1, middle);
                try (ResultSet r = p.executeQuery()) {
                    if (!r.next() || r.getLong(2) >= from.toEpochMilli()) {
                        high = middle;
                    } else {
                        low = r.getLong(1) + 1;
                    }
                }
            }
        }
        return low;
    }

    private long number(String sql) throws SQLException {
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery(sql)) {
            return r.next() ? r.getLong(1) : 0;
        }
    }

    /**
     * Messages, entries and states of a span, in the order they were stored.
     *
     * @return lines that could not be read and were passed over
     */
    int lines(Instant from, Instant to, Consumer<RecordedLine> sink) throws SQLException {
        return lines(from, to, 0, (seq, line) -> sink.accept(line));
    }

    /** Takes a line and its place in the record. */
    interface Numbered {
        void accept(long seq, RecordedLine line);
    }

    /** The same, behind a place in the record. */
    int lines(Instant from, Instant to, long behind, Numbered sink) throws SQLException {
        Map<Integer, String> topics = topics();
        int broken = 0;
        try (PreparedStatement p = db.prepareStatement(LINES)) {
            p.setLong(1, seqAt(from));
            p.setLong(2, from.toEpochMilli());
            p.setLong(3, to.toEpochMilli());
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    if (r.getLong(1) <= behind) {
                        continue;
                    }
                    String json = r.getString(6);
                    RecordedLine line = json == null ? message(r, topics) : line(json, r.getLong(2));
                    if (line == null) {
                        broken++;
                    } else {
                        sink.accept(r.getLong(1), line);
                    }
                }
            }
        }
        return broken;
    }

    private Map<Integer, String> topics() throws SQLException {
        Map<Integer, String> topics = new HashMap<>();
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT id, name FROM topic")) {
            while (r.next()) {
                topics.put(r.getInt(1), r.getString(2));
            }
        }
        return topics;
    }

    private static RecordedLine.@Nullable Message message(ResultSet r, Map<Integer, String> topics)
            throws SQLException {
        String topic = topics.get(r.getInt(3));
        if (topic == null) {
            return null;
        }
        byte[] payload = r.getBytes(5);
        int flags = r.getInt(4);
        return new RecordedLine.Message(
                Instant.ofEpochMilli(r.getLong(2)),
                topic,
                payload == null ? new byte[0] : payload,
                flags & 3,
                (flags & 4) != 0);
    }

    /** Null where it cannot be read, or where its own time is not that of its row: then one of the two is spoilt. */
    static @Nullable RecordedLine line(@Nullable String json, long time) {
        String what = "it is empty";
        if (json != null) {
            try {
                RecordedLine line = LineJson.fromJson(json);
                if (line.time().toEpochMilli() == time) {
                    return line;
                }
                what = "its time is not that of its row";
            } catch (BrokenEntry e) {
                what = e.what();
            }
        }
        LOG.warn("a line in the journal cannot be read: {}", what);
        return null;
    }

    /** What the grower entered in a span, in the order it was stored; what cannot be read is passed over. */
    void entries(Instant from, Instant to, Consumer<RecordedLine.Entry> sink) throws SQLException {
        for (RecordedLine line : readable("entry", from, to)) {
            if (line instanceof RecordedLine.Entry entry) {
                sink.accept(entry);
            }
        }
    }

    /** How the feed and the watch changed in a span, in the order it was stored; what cannot be read is passed over. */
    List<RecordedLine> states(Instant from, Instant to) throws SQLException {
        return readable("state", from, to);
    }

    private List<RecordedLine> readable(String table, Instant from, Instant to) throws SQLException {
        List<RecordedLine> all = new ArrayList<>();
        rows(table, from, to, (json, time) -> {
            RecordedLine line = line(json, time);
            if (line != null) {
                all.add(line);
            }
        });
        return all;
    }

    /** The alarm lines of a span, in the order they were stored. */
    List<String> transitions(Instant from, Instant to) throws SQLException {
        List<String> all = new ArrayList<>();
        rows("transition", from, to, (json, time) -> {
            if (json != null) {
                all.add(json);
            }
        });
        return all;
    }

    /** The last alarm lines, oldest first. */
    List<String> lastTransitions(int most) throws SQLException {
        List<String> lines = new ArrayList<>();
        try (PreparedStatement p = db.prepareStatement("SELECT json FROM transition ORDER BY seq DESC LIMIT ?")) {
            p.setInt(1, most);
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    lines.add(r.getString(1));
                }
            }
        }
        Collections.reverse(lines);
        return lines;
    }

    private interface Row {
        void of(@Nullable String json, long time);
    }

    private void rows(String table, Instant from, Instant to, Row row) throws SQLException {
        String sql = "SELECT json, time FROM " + table + " WHERE time >= ? AND time < ? ORDER BY seq";
        try (PreparedStatement p = db.prepareStatement(sql)) {
            p.setLong(1, from.toEpochMilli());
            p.setLong(2, to.toEpochMilli());
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    row.of(r.getString(1), r.getLong(2));
                }
            }
        }
    }

    /** The last state of each alarm, by kind and subject. */
    List<String> alarms() throws SQLException {
        List<String> all = new ArrayList<>();
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT json FROM alarm WHERE json IS NOT NULL ORDER BY kind, subject")) {
            while (r.next()) {
                all.add(r.getString(1));
            }
        }
        return all;
    }

    /** The site file as the last watch read it; null where none was kept. */
    @Nullable
    String site() throws SQLException {
        try (Statement s = db.createStatement()) {
            try (ResultSet r = s.executeQuery("SELECT 1 FROM sqlite_master WHERE name = 'site'")) {
                if (!r.next()) {
                    return null; // of an older version
                }
            }
            try (ResultSet r = s.executeQuery("SELECT text FROM site ORDER BY time DESC LIMIT 1")) {
                return r.next() ? r.getString(1) : null;
            }
        }
    }

    @Nullable
    Instant firstMessage() throws SQLException {
        return instant(number("SELECT time FROM message ORDER BY seq LIMIT 1"));
    }

    /** The first time it tells of; null where it is empty. */
    @Nullable
    Instant firstSeen() throws SQLException {
        return instant(
                number("SELECT ifnull(min(t), 0) FROM (SELECT (SELECT time FROM message ORDER BY seq LIMIT 1) AS t"
                        + " UNION ALL SELECT min(time) FROM entry UNION ALL SELECT min(time) FROM transition"
                        + " UNION ALL SELECT min(time) FROM state UNION ALL SELECT min((SELECT minute FROM rollup"
                        + " WHERE probe = id ORDER BY minute LIMIT 1)) * 60000 FROM topic)"));
    }

    private static @Nullable Instant instant(long millis) {
        return millis == 0 ? null : Instant.ofEpochMilli(millis);
    }

    /** How far the last watch came; null where none has run. */
    @Nullable
    Instant lastSeen() throws SQLException {
        long last = number(LAST);
        return last <= PAST_CHANGE_MS ? null : Instant.ofEpochMilli(last);
    }

    /** What was last known of chlorine at or before a time; null where nothing is kept of it. */
    @Nullable
    KeptChlorine chlorine(Instant upTo) throws SQLException {
        try (PreparedStatement p =
                db.prepareStatement("SELECT time, json FROM chlorine WHERE time <= ? ORDER BY time DESC LIMIT 1")) {
            p.setLong(1, upTo.toEpochMilli());
            try (ResultSet r = p.executeQuery()) {
                String json = r.next() ? r.getString(2) : null;
                return json == null ? null : new KeptChlorine(Instant.ofEpochMilli(r.getLong(1)), json);
            }
        }
    }
}
