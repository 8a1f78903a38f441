package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the journal tells of incidents. */
class IncidentReadsTest {
    private static final Instant T0 = JournalTest.T0;

    @TempDir
    Path dir;

    private final List<String> told = new ArrayList<>();
    private final Story story = new Story() {
        @Override
        public void changed(String line) {
            told.add(line.substring(0, line.indexOf(',')) + "}");
        }

        @Override
        public void entered(OperatorEntry entry) {
            told.add(((OperatorEntry.Note) entry).text());
        }
    };

    private Journal open() throws Exception {
        return Journal.open(dir, "larkfield", () -> T0);
    }

    private static String line(int n, String incident) {
        return "{\"n\":" + n + ",\"state\":\"unacknowledged\",\"alarm\":\"unplanned-inflow\",\"incident\":\"" + incident
                + "\",\"message\":\"of \\\"incident\\\":\\\"two\\\"\"}";
    }

    private static KeptTransition change(int n, String incident, boolean onSheet) {
        return new KeptTransition(
                T0.plusSeconds(n), line(n, incident), "unplanned-inflow", "sump", "{}", onSheet ? incident : "");
    }

    private static void fill(Journal journal) {
        journal.appendEntry(JournalTest.note(1, "before all"));
        journal.appendTransitions(List.of(change(2, "one", true)));
        journal.appendEntry(JournalTest.note(3, "between"));
        journal.appendTransitions(List.of(change(4, "silent", false), change(5, "two", true), change(6, "one", true)));
        journal.write(List.of(new Writing.Figures("two", "{\"l\":2}"), new Writing.Figures("unheard of", "{}")));
        journal.write(List.of(new Writing.Figures("two", "{\"l\":3}")));
    }

    @Test
    void tellsLinesOfIncidentsAndEntriesFromTheFirstLineOn() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
            List<KeptIncident> all = journal.incidents(50, story);
            assertEquals(
                    List.of("one", "two"), all.stream().map(KeptIncident::id).toList());
            assertEquals("{\"l\":3}", all.get(1).json());
            assertEquals(List.of("{\"n\":2}", "between", "{\"n\":5}", "{\"n\":6}"), told);
        }
    }

    @Test
    void tellsOfTheNewestOnlyAndBeginsWhereTheseBegin() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
            assertEquals(
                    List.of("two"),
                    journal.incidents(1, story).stream().map(KeptIncident::id).toList());
            assertEquals(List.of("{\"n\":5}"), told);
        }
    }

    /** A year's lines are not read for it. */
    @Test
    void findsTheFirstLineByItsKey() throws Exception {
        open().close();
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("larkfield.db"));
                Statement s = db.createStatement();
                ResultSet r = s.executeQuery("EXPLAIN QUERY PLAN " + IncidentReads.STORY.replace("?1", "7"))) {
            String plan = "";
            while (r.next()) {
                plan += r.getString("detail") + "; ";
            }
            assertTrue(plan.contains("SEARCH transition USING INTEGER PRIMARY KEY"), plan);
            assertTrue(plan.contains("SEARCH entry USING INTEGER PRIMARY KEY"), plan);
            assertFalse(plan.contains("SCAN") || plan.contains("TEMP B-TREE"), plan);
        }
    }

    /** A journal of the version before knew no incidents: its alarm lines do, also beside spoilt ones. */
    @Test
    void takesIncidentsOutOfTheLinesOfAnOlderJournal() throws Exception {
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("larkfield.db"))) {
            Schema.migrate(db, Schema.STEPS.subList(0, 3));
            try (Statement s = db.createStatement()) {
                for (int n = 1; n <= 5; n++) {
                    String json =
                            n == 2 ? "{spoilt" : line(n, n < 4 ? "one" : "two").replace("'", "''");
                    s.execute("INSERT INTO transition VALUES (" + n + ", "
                            + T0.plusSeconds(n).toEpochMilli() + ", '" + json + "')");
                }
                s.execute("INSERT INTO transition VALUES (6, 6, '"
                        + line(6, "silent").replace("unplanned-inflow", "probe-silent") + "')");
                s.execute("INSERT INTO transition VALUES (7, 7, x'00ff')");
            }
            db.commit();
        }
        try (Journal journal = open()) {
            assertEquals(
                    List.of(new KeptIncident(1, "one", null), new KeptIncident(4, "two", null)),
                    journal.incidents(50, story));
            assertEquals(List.of("{\"n\":1}", "{\"n\":3}", "{\"n\":4}", "{\"n\":5}"), told);
            assertTrue(journal.state().durable());
        }
    }
}
