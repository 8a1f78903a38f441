package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import java.nio.file.Path;
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

/** The statements. Each method is one transaction: done, or undone when it throws; the store is not used again then. */
final class JournalStore {
    private static final String NEXT =
            "SELECT max(ifnull((SELECT max(seq) FROM message), 0), ifnull((SELECT max(seq) FROM entry), 0),"
                    + " ifnull((SELECT max(seq) FROM transition), 0)) + 1";
    private static final String REPLAY =
            "SELECT seq, time, topic, flags, payload, NULL FROM message WHERE time >= ?1 UNION ALL"
                    + " SELECT seq, time, NULL, NULL, NULL, json FROM entry WHERE time >= ?1 ORDER BY seq";

    private final Connection db;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<Integer, String> names = new HashMap<>();
    private long next;

    JournalStore(Connection db) throws SQLException {
        this.db = db;
        try (Statement s = db.createStatement()) {
            try (ResultSet r = s.executeQuery(NEXT)) {
                next = r.next() ? r.getLong(1) : 1;
            }
            try (ResultSet r = s.executeQuery("SELECT id, name FROM topic")) {
                while (r.next()) {
                    name(r.getInt(1), r.getString(2));
                }
            }
        }
        db.commit();
    }

    private void name(int id, String name) {
        numbers.put(name, id);
        names.put(id, name);
    }

    private interface Writes {
        void run() throws SQLException;
    }

    private void transaction(Writes writes) throws SQLException {
        try {
            writes.run();
            db.commit();
        } catch (SQLException e) {
            try {
                db.rollback();
            } catch (SQLException undone) {
                e.addSuppressed(undone); // on a full disk SQLite has undone it already
            }
            throw e;
        }
    }

    void messages(List<RecordedLine.Message> messages) throws SQLException {
        transaction(() -> {
            try (PreparedStatement p = db.prepareStatement("INSERT INTO message VALUES (?, ?, ?, ?, ?)")) {
                for (RecordedLine.Message m : messages) {
                    p.setLong(1, next++);
                    p.setLong(2, m.time().toEpochMilli());
                    p.setInt(3, number(m.topic()));
                    p.setInt(4, m.qos() + (m.retain() ? 4 : 0));
                    p.setBytes(5, m.payload());
                    p.addBatch();
                }
                p.executeBatch();
            }
        });
    }

    private int number(String name) throws SQLException {
        Integer known = numbers.get(name);
        if (known != null) {
            return known;
        }
        int id = numbers.size() + 1;
        try (PreparedStatement p = db.prepareStatement("INSERT INTO topic VALUES (?, ?)")) {
            p.setInt(1, id);
            p.setString(2, name);
            p.executeUpdate();
        }
        name(id, name);
        return id;
    }

    /** Synced to the disk before it returns, and with it all that was stored before. */
    void durable(String table, Instant at, String json) throws SQLException {
        pragma("FULL");
        transaction(() -> {
            try (PreparedStatement p = db.prepareStatement("INSERT INTO " + table + " VALUES (?, ?, ?)")) {
                p.setLong(1, next++);
                p.setLong(2, at.toEpochMilli());
                p.setString(3, json);
                p.executeUpdate();
            }
        });
        pragma("NORMAL");
    }

    /** Works only between transactions, hence the switch to autocommit. */
    private void pragma(String synchronous) throws SQLException {
        db.setAutoCommit(true);
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA synchronous=" + synchronous);
        }
        db.setAutoCommit(false);
    }

    void rollups(List<Rollup> rollups) throws SQLException {
        transaction(() -> {
            try (PreparedStatement p = db.prepareStatement("INSERT OR REPLACE INTO rollup VALUES (?, ?, ?, ?, ?, ?)")) {
                for (Rollup r : rollups) {
                    p.setInt(1, number(r.probe()));
                    p.setLong(2, r.minute().getEpochSecond() / 60);
                    p.setInt(3, r.count());
                    p.setDouble(4, r.mean());
                    p.setDouble(5, r.low());
                    p.setDouble(6, r.high());
                    p.addBatch();
                }
                p.executeBatch();
            }
        });
    }

    void replay(Instant from, Consumer<RecordedLine> messages, Consumer<String> entries) throws SQLException {
        try (PreparedStatement p = db.prepareStatement(REPLAY)) {
            p.setLong(1, from.toEpochMilli());
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    String json = r.getString(6);
                    if (json != null) {
                        entries.accept(json);
                    } else {
                        messages.accept(message(r));
                    }
                }
            }
        }
        db.commit();
    }

    private RecordedLine.Message message(ResultSet r) throws SQLException {
        byte[] payload = r.getBytes(5);
        int flags = r.getInt(4);
        return new RecordedLine.Message(
                Instant.ofEpochMilli(r.getLong(2)),
                names.getOrDefault(r.getInt(3), ""),
                payload == null ? new byte[0] : payload,
                flags & 3,
                (flags & 4) != 0);
    }

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
        db.commit();
        Collections.reverse(lines);
        return lines;
    }

    List<Rollup> rollups(String probe, Instant from, Instant to) throws SQLException {
        List<Rollup> all = new ArrayList<>();
        String sql = "SELECT minute, count, mean, low, high FROM rollup WHERE probe = ? AND minute >= ? AND minute < ?";
        try (PreparedStatement p = db.prepareStatement(sql + " ORDER BY minute")) {
            p.setInt(1, numbers.getOrDefault(probe, 0));
            p.setLong(2, Math.floorDiv(from.getEpochSecond() + 59, 60));
            p.setLong(3, Math.floorDiv(to.getEpochSecond() + 59, 60));
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    Instant minute = Instant.ofEpochSecond(r.getLong(1) * 60);
                    all.add(new Rollup(probe, minute, r.getInt(2), r.getDouble(3), r.getDouble(4), r.getDouble(5)));
                }
            }
        }
        db.commit();
        return all;
    }

    void prune(Instant before) throws SQLException {
        transaction(() -> {
            try (PreparedStatement p = db.prepareStatement("DELETE FROM message WHERE time < ?")) {
                p.setLong(1, before.toEpochMilli());
                p.executeUpdate();
            }
        });
    }

    void backup(Path target) throws SQLException {
        db.setAutoCommit(true);
        try (PreparedStatement p = db.prepareStatement("VACUUM INTO ?")) {
            p.setString(1, target.toAbsolutePath().toString());
            p.execute();
        } finally {
            db.setAutoCommit(false);
        }
    }

    /** For the tests of a full disk: the file may not grow beyond so many pages. */
    void limitPages(long pages) throws SQLException {
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA max_page_count=" + pages);
        }
        db.commit();
    }

    void close() throws SQLException {
        db.close();
    }
}
