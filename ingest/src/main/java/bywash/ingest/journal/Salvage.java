package bywash.ingest.journal;

import bywash.rules.response.IncidentBook;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes over from a damaged journal what can still be read of it, table by table, from both ends up to where the damage is.
 * Of messages the last week, which is more than a restart needs: the old file is kept.
 */
final class Salvage {
    private static final Logger LOG = LoggerFactory.getLogger(Salvage.class);
    private static final long WEEK_MS = 7 * 86_400_000L;
    /** No sequence of ours comes near; what is beyond is damage. */
    private static final long MOST_SEQ = 1L << 52;

    private static final List<String> LOGS = List.of("message", "entry", "state", "transition");
    private static final List<String> TABLES =
            List.of("topic", "alarm", "alive", "site", "incident", "chlorine", "rollup");

    /** Incidents whose own row is lost, by the lines that are left of them. */
    private static final String INCIDENTS_OF_LINES =
            "INSERT OR IGNORE INTO incident SELECT min(seq), incident, NULL FROM (SELECT seq, CASE WHEN json_valid(json)"
                    + " AND json_extract(json, '$.alarm') IN (" + incidentKinds() + ")"
                    + " THEN json_extract(json, '$.incident') END AS incident FROM transition)"
                    + " WHERE incident <> '' GROUP BY incident";

    /** What was taken over. */
    record Saved(int entries, int alarmLines, int messages) {
        String words() {
            return (entries == 1 ? "1 entry, " : entries + " entries, ")
                    + (alarmLines == 1 ? "1 alarm line and " : alarmLines + " alarm lines and ")
                    + (messages == 1 ? "1 message" : messages + " messages");
        }
    }

    private Salvage() {}

    /** As SQL has them; the words are our own and hold no quote. */
    private static String incidentKinds() {
        return IncidentBook.KINDS.stream().map(kind -> "'" + kind.word() + "'").collect(Collectors.joining(", "));
    }

    /**
     * Takes over what can be read; may be done again.
     *
     * @param fresh with all tables
     * @throws SQLException where the fresh one does not take it
     */
    static Saved from(Path damaged, Connection fresh) throws SQLException {
        int[] count = new int[LOGS.size()];
        try (Connection old = open(damaged)) {
            for (String table : TABLES) {
                copy(old, fresh, table, key(table), "1");
            }
            for (int i = 0; i < LOGS.size(); i++) {
                String where = "seq BETWEEN 1 AND " + MOST_SEQ + (i > 0 ? "" : " AND time > " + weekAgo(old));
                count[i] = copy(old, fresh, LOGS.get(i), "seq", where);
            }
        }
        try (Statement s = fresh.createStatement()) {
            s.executeUpdate(INCIDENTS_OF_LINES);
        }
        fresh.commit();
        return new Saved(count[1], count[3], count[0]);
    }

    /** What is no database at all is as good as an empty one. */
    private static Connection open(Path damaged) throws SQLException {
        Connection old = DriverManager.getConnection("jdbc:sqlite:" + damaged.toAbsolutePath());
        try (Statement s = old.createStatement()) {
            s.execute("PRAGMA writable_schema=ON"); // else a file that was cut short is refused as a whole
            s.execute("PRAGMA schema_version");
            return old;
        } catch (SQLException e) {
            old.close();
            LOG.warn("nothing can be read of {}: {}", damaged, e.getMessage());
            return DriverManager.getConnection("jdbc:sqlite::memory:");
        }
    }

    private static String key(String table) {
        return switch (table) {
            case "alarm" -> "kind";
            case "rollup" -> "probe";
            default -> "rowid";
        };
    }

    private static long weekAgo(Connection old) {
        try (Statement s = old.createStatement();
                ResultSet r = s.executeQuery("SELECT time FROM message ORDER BY seq DESC LIMIT 1")) {
            return r.next() ? r.getLong(1) - WEEK_MS : 0;
        } catch (SQLException e) {
            return 0;
        }
    }

    /** From the end, which matters most, and from the beginning. */
    private static int copy(Connection old, Connection fresh, String table, String key, String where)
            throws SQLException {
        int copied = 0;
        for (String order : List.of(" DESC", " ASC")) {
            String sql = "SELECT * FROM " + table + " WHERE " + where + " ORDER BY " + key + order;
            try (Statement s = old.createStatement();
                    ResultSet r = asked(s, sql)) {
                copied += rows(r, fresh, table);
                break; // whole
            } catch (DamagedRow e) {
                copied += e.before;
                LOG.warn("table {} of the damaged journal ends early: {}", table, e.getMessage());
            }
        }
        return copied;
    }

    private static ResultSet asked(Statement s, String sql) throws DamagedRow {
        try {
            return s.executeQuery(sql);
        } catch (SQLException e) {
            throw new DamagedRow(0, e);
        }
    }

    private static final class DamagedRow extends Exception {
        private static final long serialVersionUID = 1L;
        private final int before;

        DamagedRow(int before, SQLException cause) {
            super(cause.getMessage(), cause);
            this.before = before;
        }
    }

    /** A fault in reading ends it; one in writing, such as a full disk, is the caller's. */
    private static int rows(ResultSet r, Connection fresh, String table) throws SQLException, DamagedRow {
        int columns = r.getMetaData().getColumnCount();
        String marks = Arrays.stream(new int[columns]).mapToObj(c -> "?").collect(Collectors.joining(", "));
        int copied = 0;
        try (PreparedStatement p =
                fresh.prepareStatement("INSERT OR IGNORE INTO " + table + " VALUES (" + marks + ")")) {
            Object[] row = new Object[columns];
            while (next(r, row, copied)) {
                for (int c = 0; c < columns; c++) {
                    p.setObject(c + 1, row[c]);
                }
                copied += p.executeUpdate();
            }
        }
        return copied;
    }

    private static boolean next(ResultSet r, Object[] row, int copied) throws DamagedRow {
        try {
            if (!r.next()) {
                return false;
            }
            for (int c = 0; c < row.length; c++) {
                row[c] = r.getObject(c + 1);
            }
            return true;
        } catch (SQLException e) {
            throw new DamagedRow(copied, e);
        }
    }
}
