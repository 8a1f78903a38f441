package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
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

/** The statements. Each method is one transaction: done, or undone when it throws; the store is not used again then. */
final class JournalStore implements Writing.Store {
    private static final String NEXT =
            "SELECT max(ifnull((SELECT max(seq) FROM message), 0), ifnull((SELECT max(seq) FROM entry), 0),"
                    + " ifnull((SELECT max(seq) FROM transition), 0), ifnull((SELECT max(seq) FROM state), 0)) + 1";

    /** Twice as many as are ever shown stay. */
    private static final String OLD_INCIDENTS =
            "DELETE FROM incident WHERE seq <= (SELECT seq FROM incident ORDER BY seq DESC LIMIT 1 OFFSET 100)";

    /** Five days of hours stay: more than are played again. */
    private static final String OLD_CHLORINE =
            "DELETE FROM chlorine WHERE time <= (SELECT time FROM chlorine ORDER BY time DESC LIMIT 1 OFFSET 120)";

    private final Connection db;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<String, PreparedStatement> statements = new HashMap<>();
    private long next;

    JournalStore(Connection db) throws SQLException {
        this.db = db;
        try (Statement s = db.createStatement()) {
            try (ResultSet r = s.executeQuery(NEXT)) {
                next = r.next() ? r.getLong(1) : 1;
            }
            try (ResultSet r = s.executeQuery("SELECT id, name FROM topic")) {
                while (r.next()) {
                    numbers.put(r.getString(2), r.getInt(1));
                }
            }
        }
        db.commit();
    }

    /** The last line of the record; 0 where there is none. */
    long last() {
        return next - 1;
    }

    /** Each by itself into a journal in memory that is then forgotten. */
    static void rehearse(List<Writing> all) throws SQLException {
        try (Connection db = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            Schema.migrate(db);
            JournalStore store = new JournalStore(db);
            for (Writing writing : all) {
                store.write(List.of(writing));
            }
        }
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

    /** All of it, in this order, as one transaction; synced before it returns where something in it must be. */
    void write(List<Writing> all) throws SQLException {
        boolean durable = all.stream().anyMatch(Writing::durable);
        if (durable) {
            pragma("FULL");
        }
        transaction(() -> {
            try {
                for (Writing writing : all) {
                    writing.into(this);
                }
            } finally {
                release();
            }
        });
        if (durable) {
            pragma("NORMAL");
        }
    }

    /** A statement left open holds up checkpoints and copies. */
    private void release() throws SQLException {
        for (PreparedStatement statement : statements.values()) {
            statement.close();
        }
        statements.clear();
    }

    /** Until the transaction ends. */
    private PreparedStatement prepared(String sql) throws SQLException {
        PreparedStatement known = statements.get(sql);
        if (known == null) {
            known = db.prepareStatement(sql);
            statements.put(sql, known);
        }
        return known;
    }

    @Override
    public void message(RecordedLine.Message m) throws SQLException {
        int topic = number(m.topic());
        PreparedStatement p = prepared("INSERT INTO message VALUES (?, ?, ?, ?, ?)");
        p.setLong(1, next++);
        p.setLong(2, m.time().toEpochMilli());
        p.setInt(3, topic);
        p.setInt(4, m.qos() + (m.retain() ? 4 : 0));
        p.setBytes(5, m.payload());
        p.executeUpdate();
    }

    private int number(String name) throws SQLException {
        Integer known = numbers.get(name);
        if (known != null) {
            return known;
        }
        int id = numbers.size() + 1;
        PreparedStatement p = prepared("INSERT INTO topic VALUES (?, ?)");
        p.setInt(1, id);
        p.setString(2, name);
        p.executeUpdate();
        numbers.put(name, id);
        return id;
    }

    @Override
    public void transition(KeptTransition t) throws SQLException {
        if (!t.incident().isEmpty()) {
            PreparedStatement p = prepared("INSERT OR IGNORE INTO incident VALUES (?, ?, NULL)");
            p.setLong(1, next);
            p.setString(2, t.incident());
            p.executeUpdate();
        }
        insert("transition", t.at(), t.json());
        standing(t);
    }

    @Override
    public void figures(Writing.Figures f) throws SQLException {
        PreparedStatement p = prepared("UPDATE incident SET json = ? WHERE id = ?");
        p.setString(1, f.json());
        p.setString(2, f.incident());
        p.executeUpdate();
    }

    @Override
    public void standing(KeptTransition t) throws SQLException {
        PreparedStatement p = prepared("INSERT OR REPLACE INTO alarm VALUES (?, ?, ?)");
        p.setString(1, t.kind());
        p.setString(2, t.subject());
        p.setString(3, t.state());
        p.executeUpdate();
    }

    @Override
    public void state(Instant at, String json) throws SQLException {
        insert("state", at, json);
    }

    @Override
    public void entry(Instant at, String json) throws SQLException {
        insert("entry", at, json);
    }

    private void insert(String table, Instant at, String json) throws SQLException {
        PreparedStatement p = prepared("INSERT INTO " + table + " VALUES (?, ?, ?)");
        p.setLong(1, next++);
        p.setLong(2, at.toEpochMilli());
        p.setString(3, json);
        p.executeUpdate();
    }

    /** The site file from a time on; the same text as before is not kept twice. */
    @Override
    public void site(Instant at, String text) throws SQLException {
        if (text.equals(new JournalReads(db).site())) {
            return;
        }
        PreparedStatement p = prepared("INSERT OR REPLACE INTO site VALUES (?, ?)");
        p.setLong(1, at.toEpochMilli());
        p.setString(2, text);
        p.executeUpdate();
    }

    @Override
    public void chlorine(Instant at, String json) throws SQLException {
        PreparedStatement p = prepared("INSERT OR REPLACE INTO chlorine VALUES (?, ?)");
        p.setLong(1, at.toEpochMilli());
        p.setString(2, json);
        p.executeUpdate();
    }

    void alive(Instant at) throws SQLException {
        transaction(() -> {
            try (PreparedStatement p = db.prepareStatement("INSERT OR REPLACE INTO alive VALUES (1, ?)")) {
                p.setLong(1, at.toEpochMilli());
                p.executeUpdate();
            }
        });
    }

    /** Works only between transactions, hence the switch to autocommit. */
    private void pragma(String synchronous) throws SQLException {
        db.setAutoCommit(true);
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA synchronous=" + synchronous);
        }
        db.setAutoCommit(false);
    }

    @Override
    public void minute(Rollup r) throws SQLException {
        int probe = number(r.probe());
        PreparedStatement p = prepared("INSERT OR REPLACE INTO rollup VALUES (?, ?, ?, ?, ?, ?)");
        p.setInt(1, probe);
        p.setLong(2, r.minute().getEpochSecond() / 60);
        p.setInt(3, r.count());
        p.setDouble(4, r.mean());
        p.setDouble(5, r.low());
        p.setDouble(6, r.high());
        p.executeUpdate();
    }

    /** Asks, and ends the reading transaction that asking began. */
    <T> T read(Question<JournalReads, T> question) throws SQLException {
        return ask(new JournalReads(db), question);
    }

    /** The same for the minutes. */
    <T> T readMinutes(Question<MinuteReads, T> question) throws SQLException {
        return ask(new MinuteReads(db), question);
    }

    /** The same for incidents. */
    <T> T readIncidents(Question<IncidentReads, T> question) throws SQLException {
        return ask(new IncidentReads(db), question);
    }

    private <R, T> T ask(R reads, Question<R, T> question) throws SQLException {
        T answer = question.of(reads);
        db.commit();
        return answer;
    }

    interface Question<R, T> {
        T of(R reads) throws SQLException;
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
            try (PreparedStatement p = db.prepareStatement("DELETE FROM message WHERE seq < ? AND time < ?")) {
                p.setLong(1, new JournalReads(db).seqAt(before));
                p.setLong(2, before.toEpochMilli());
                p.executeUpdate();
            }
            for (String old : List.of(OLD_INCIDENTS, OLD_CHLORINE)) {
                try (PreparedStatement p = db.prepareStatement(old)) {
                    p.executeUpdate();
                }
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
