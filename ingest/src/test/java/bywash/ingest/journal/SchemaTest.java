package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.response.IncidentBook;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SchemaTest {
    private static final List<String> ONE = List.of("CREATE TABLE t (a)", "INSERT INTO t VALUES (1)");
    private static final List<String> TWO = List.of("ALTER TABLE t ADD COLUMN b DEFAULT 2");

    @TempDir
    Path dir;

    private Connection connect() throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("t.db"));
    }

    @Test
    void takesEachStepOnceAndKeepsWhatWasThere() throws Exception {
        try (Connection db = connect()) {
            Schema.migrate(db, List.of(ONE));
        }
        try (Connection db = connect()) {
            Schema.migrate(db, List.of(ONE, TWO));
        }
        try (Connection db = connect()) {
            Schema.migrate(db, List.of(ONE, TWO));
            try (Statement s = db.createStatement();
                    ResultSet r = s.executeQuery("SELECT count(*), sum(a + b) FROM t")) {
                assertEquals(1, r.getInt(1));
                assertEquals(3, r.getInt(2));
            }
        }
    }

    @Test
    void leavesTheFileOfANewerProgramAlone() throws Exception {
        try (Connection db = connect()) {
            Schema.migrate(db, List.of(ONE, TWO));
        }
        try (Connection db = connect()) {
            SQLException e = assertThrows(Schema.NewerFile.class, () -> Schema.migrate(db, List.of(ONE)));
            assertEquals("it is of version 2, and this program knows 1", e.getMessage());
        }
    }

    /**
     * A released step keeps its words though the rules may change theirs. A kind that begins an incident only from a later version on
     * has no lines in a journal of that age; take it out of what is expected here.
     */
    @Test
    void theStepThatListsIncidentsKnowsTheKindsThatBeginOne() throws Exception {
        Set<String> listed = new TreeSet<>();
        try (Connection db = connect()) {
            Schema.migrate(db, Schema.STEPS.subList(0, 3));
            try (Statement s = db.createStatement()) {
                for (AlarmKind kind : AlarmKind.values()) {
                    s.execute("INSERT INTO transition (json) VALUES ('{\"alarm\":\"" + kind.word()
                            + "\",\"state\":\"unacknowledged\",\"incident\":\"of " + kind.word() + "\"}')");
                }
                db.commit();
            }
        }
        try (Connection db = connect()) {
            Schema.migrate(db);
        }
        try (Connection db = connect();
                Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT id FROM incident")) {
            while (r.next()) {
                listed.add(r.getString(1));
            }
        }
        assertEquals(
                IncidentBook.KINDS.stream()
                        .map(kind -> "of " + kind.word())
                        .collect(Collectors.toCollection(TreeSet::new)),
                listed);
    }
}
