package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;

/**
 * What each kind of {@link Writing} puts into the tables: gives each line of the logs the next place in the record, and each topic and
 * probe its number. Everything happens in the caller's transaction; after one that was undone it is not used again, for its
 * places and numbers run ahead of the file.
 */
final class JournalInserts implements Writing.Store {
    private static final String NEXT =
            "SELECT max(ifnull((SELECT max(seq) FROM message), 0), ifnull((SELECT max(seq) FROM entry), 0),"
                    + " ifnull((SELECT max(seq) FROM transition), 0), ifnull((SELECT max(seq) FROM state), 0)) + 1";

    private final Connection db;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<String, PreparedStatement> statements = new HashMap<>();
    private long next;

    JournalInserts(Connection db) throws SQLException {
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
    }

    /** The place of the last line of the record; 0 where there is none. */
    long last() {
        return next - 1;
    }

    /** A statement left open holds up checkpoints and copies. */
    void release() throws SQLException {
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
}
