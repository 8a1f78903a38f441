package bywash.tui.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.samples.SampleRecordings;
import bywash.tui.watch.Larkfield;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The litres of the season's report: what was entered, and what the last lines of the alarms say. */
class SeasonFlowsTest {
    private static SeasonReport report(SampleRecordings sample) throws Exception {
        SeasonRun run = new SeasonRun(Larkfield.site());
        var site = sample.simulation();
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            run.accept(line);
        }
        return new SeasonReport(run.finish().orElseThrow());
    }

    private static Table table(SeasonReport report, String name) {
        return report.tables().stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> row(Table table, String which) {
        return table.rows().stream()
                .filter(r -> r.get(0).equals(which))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void waterThatNobodyDeclaredIsReportedWithItsLitres() throws Exception {
        SeasonReport report = report(SampleRecordings.VALVE_OPEN);
        List<String> row = row(table(report, "water-moved"), "in, not declared");
        assertEquals(List.of("sump", "outside", "1"), row.subList(1, 4));
        assertEquals(290, Double.parseDouble(row.get(4)), 1, "what the alarm's last line says");
        String text = ReportWriter.markdown(report);
        assertTrue(text.contains("Water: " + row.get(4) + " L in that nobody had declared."), text);
        assertEquals(
                "reserve filled", table(report, "water-moves").rows().get(0).get(1));
        assertEquals("270", row(table(report, "water-months"), "2026-05").get(5));
    }

    @Test
    void whatWasDeclaredOfALineLeftOpenCountsOnce() throws Exception {
        Table table = table(report(SampleRecordings.TOP_UP_DRIBBLING), "water-moved");
        assertEquals("90", row(table, "declared top-up").get(4));
        double extra =
                Double.parseDouble(row(table, "line not shut after a top-up").get(4));
        assertEquals(1.5 * 75, extra, 3, "1.5 L/min for 75 min after the end, estimated from the level");
    }
}
