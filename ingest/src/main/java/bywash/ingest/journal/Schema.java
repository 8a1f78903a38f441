package bywash.ingest.journal;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * The tables, and the steps from each version to the next. The version stands in SQLite's own user_version; a step is never
 * changed once released, a new one is added behind it.
 *
 * <p>{@code seq} runs through all four logs, so that they can be played back in the order they were stored. Table
 * state holds how the feed and the watch stood; table alarm the last state of each alarm; alive how far the watch came; site the text
 * of the site file from a time on; incident those of the response sheets, each under the seq of its first alarm line, with what readings
 * added to it; chlorine what was known of it at whole hours. Topics and
 * probes are named once and numbered. Flags: quality of service plus 4 where retained. Times are milliseconds since 1970.
 */
final class Schema {
    static final List<List<String>> STEPS = List.of(
            List.of(
                    "CREATE TABLE topic (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE)",
                    "CREATE TABLE message (seq INTEGER PRIMARY KEY, time INTEGER, topic INTEGER, flags INTEGER, payload BLOB)",
                    "CREATE TABLE entry (seq INTEGER PRIMARY KEY, time INTEGER, json TEXT)",
                    "CREATE TABLE transition (seq INTEGER PRIMARY KEY, time INTEGER, json TEXT)",
                    "CREATE TABLE rollup (probe INTEGER, minute INTEGER, count INTEGER, mean REAL, low REAL, high REAL,"
                            + " PRIMARY KEY (probe, minute)) WITHOUT ROWID"),
            List.of(
                    "CREATE TABLE state (seq INTEGER PRIMARY KEY, time INTEGER, json TEXT)",
                    "CREATE TABLE alarm (kind TEXT, subject TEXT, json TEXT, PRIMARY KEY (kind, subject)) WITHOUT ROWID",
                    "CREATE TABLE alive (id INTEGER PRIMARY KEY CHECK (id = 1), time INTEGER)"),
            List.of("CREATE TABLE site (time INTEGER PRIMARY KEY, text TEXT NOT NULL)"),
            List.of(
                    "CREATE TABLE incident (seq INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, json TEXT)",
                    "INSERT INTO incident SELECT min(seq), incident, NULL FROM (SELECT seq, CASE WHEN json_valid(json)"
                            + " AND json_extract(json, '$.state') = 'unacknowledged' AND json_extract(json, '$.alarm') IN"
                            + " ('unplanned-inflow', 'unplanned-loss', 'overflow-near', 'line-not-shut', 'unsafe-release',"
                            + " 'chlorine-risk', 'orp-rise') THEN json_extract(json, '$.incident') END AS incident"
                            + " FROM transition) WHERE incident IS NOT NULL GROUP BY incident"),
            List.of("CREATE TABLE chlorine (time INTEGER PRIMARY KEY, json TEXT)"));

    private Schema() {}

    /** Brings the file to the newest version; the connection is left with autocommit off. */
    static void migrate(Connection db) throws SQLException {
        migrate(db, STEPS);
    }

    static void migrate(Connection db, List<List<String>> steps) throws SQLException {
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA journal_mode=WAL");
            s.execute("PRAGMA synchronous=NORMAL");
            int version = version(s);
            if (version > steps.size()) {
                throw new NewerFile(version, steps.size());
            }
            db.setAutoCommit(false);
            for (int v = version; v < steps.size(); v++) {
                for (String sql : steps.get(v)) {
                    s.execute(sql);
                }
                s.execute("PRAGMA user_version=" + (v + 1));
                db.commit();
            }
        }
    }

    private static int version(Statement s) throws SQLException {
        try (ResultSet r = s.executeQuery("PRAGMA user_version")) {
            return r.next() ? r.getInt(1) : 0;
        }
    }

    /** The file was written by a newer program; it is left alone. */
    static final class NewerFile extends SQLException {
        private static final long serialVersionUID = 1L;

        NewerFile(int found, int known) {
            super("it is of version " + found + ", and this program knows " + known);
        }
    }
}
