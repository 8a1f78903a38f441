package bywash.ingest.journal;

import bywash.rules.response.IncidentBook;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;

/** The transactions on one open connection. Each method is one: done, or undone when it throws; the store is not used again then. */
final class JournalStore {
    /** Twice as many as are ever shown stay. */
    private static final String OLD_INCIDENTS =
            "DELETE FROM incident WHERE seq <= (SELECT seq FROM incident ORDER BY seq DESC LIMIT 1 OFFSET "
                    + 2 * IncidentBook.MOST + ")";

    /** Five days of hours stay: more than are played again. */
    private static final String OLD_CHLORINE =
            "DELETE FROM chlorine WHERE time <= (SELECT time FROM chlorine ORDER BY time DESC LIMIT 1 OFFSET 120)";

    private final Connection db;
    private final JournalInserts inserts;

    JournalStore(Connection db) throws SQLException {
        this.db = db;
        this.inserts = new JournalInserts(db);
        db.commit();
    }

    /** The place of the last line of the record; 0 where there is none. */
    long last() {
        return inserts.last();
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
                    writing.into(inserts);
                }
            } finally {
                inserts.release();
            }
        });
        if (durable) {
            pragma("NORMAL");
        }
    }

    /** The watch has come so far. */
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

    /** Drops messages before a time, and incidents and chlorine of old. */
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

    /** Copies the whole to a file that is there and empty; works only between transactions. */
    void backup(Path target) throws SQLException {
        db.setAutoCommit(true);
        try {
            JournalFile.copy(db, target);
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
