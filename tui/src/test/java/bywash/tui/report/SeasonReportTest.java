package bywash.tui.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.event.OperatorEntry;
import bywash.samples.MakeRecordings;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo site's season, on record and reported. The report as a whole is rewritten with -Dpictures.write=true. */
class SeasonReportTest {
    private static final Path SAMPLES = Path.of("..", "sample-feeds");
    private static final Path RECORDING = SAMPLES.resolve("recordings").resolve(MakeRecordings.SEASON);
    private static final Path EXPECTED = Path.of("src/test/resources/report/season.md");

    private static final List<RecordedLine> LINES = new ArrayList<>();
    private static final List<SeasonReport> REPORTS = new ArrayList<>();

    @BeforeAll
    static void runOnce() throws IOException {
        SiteFileResult site = SiteFileReader.read(SAMPLES.resolve("sites").resolve("larkfield-season.yaml"));
        SeasonRun run = new SeasonRun(assertInstanceOf(SiteFileResult.Good.class, site, site.toString())
                .siteFile());
        try (RecordingReader reader = RecordingReader.open(RECORDING, (n, what, right) -> {
            throw new IllegalStateException(n + ": " + what);
        })) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                LINES.add(line);
                run.accept(line);
            }
        }
        REPORTS.add(new SeasonReport(run.finish().orElseThrow()));
    }

    private static SeasonReport report() {
        return REPORTS.get(0);
    }

    private static Table table(String name) {
        return report().tables().stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static <E extends OperatorEntry> List<E> entries(Class<E> type) {
        return LINES.stream()
                .filter(RecordedLine.Entry.class::isInstance)
                .map(l -> ((RecordedLine.Entry) l).entry())
                .filter(type::isInstance)
                .map(type::cast)
                .toList();
    }

    private static double cell(Table table, int row, String column) {
        return Double.parseDouble(table.rows().get(row).get(table.columns().indexOf(column)));
    }

    @Test
    void theReportIsAsItWas() throws IOException {
        String markdown = ReportWriter.markdown(report());
        if (Boolean.getBoolean("pictures.write")) {
            Files.createDirectories(EXPECTED.getParent());
            Files.writeString(EXPECTED, markdown);
        }
        assertEquals(Files.readString(EXPECTED), markdown);
    }

    @Test
    void theRecordingIsTheSimulationsOwnAndSmall() throws IOException {
        ByteArrayOutputStream made = new ByteArrayOutputStream();
        MakeRecordings.writeSeason(made);
        try (GZIPInputStream kept = new GZIPInputStream(Files.newInputStream(RECORDING))) {
            assertEquals(
                    made.toString(StandardCharsets.UTF_8), new String(kept.readAllBytes(), StandardCharsets.UTF_8));
        }
        assertTrue(Files.size(RECORDING) < 300_000, "size " + Files.size(RECORDING));
    }

    @Test
    @DisplayName("harvest of single fish agrees with Hipparchus' statistics of the entries themselves")
    void harvestAgreesWithTheEntries() {
        List<OperatorEntry.Harvest> harvests = entries(OperatorEntry.Harvest.class);
        Table table = table("harvest");
        assertEquals(harvests.size(), table.rows().size());
        for (int i = 0; i < harvests.size(); i++) {
            DescriptiveStatistics oracle = new DescriptiveStatistics();
            harvests.get(i).massesG().forEach(oracle::addValue);
            assertEquals(oracle.getStandardDeviation(), cell(table, i, "spread of these g"), 0.51);
            assertEquals(oracle.getMin(), cell(table, i, "smallest g"), 0.51);
            assertEquals(oracle.getMax(), cell(table, i, "largest g"), 0.51);
            assertEquals(harvests.get(i).count(), cell(table, i, "fish"), 0);
        }
    }

    @Test
    void fishAndFeedAreConserved() {
        double feedG = entries(OperatorEntry.Feed.class).stream()
                .mapToDouble(OperatorEntry.Feed::massG)
                .sum();
        Table feed = table("feed");
        double reported = 0;
        for (int i = 0; i < feed.rows().size(); i++) {
            reported += cell(feed, i, "feed kg");
        }
        assertEquals(feedG / 1000, reported, 0.05);
        Table stock = table("stock");
        double ofCohorts = 0;
        for (int i = 0; i < stock.rows().size(); i++) {
            ofCohorts += cell(stock, i, "feed kg");
            assertEquals(
                    cell(stock, i, "stocked"),
                    cell(stock, i, "lost")
                            + cell(stock, i, "moved out")
                            + cell(stock, i, "harvested")
                            + cell(stock, i, "now"),
                    0);
        }
        assertEquals(feedG / 1000, ofCohorts, 0.02);
    }

    @Test
    void theThreeBadDaysStandAmongTheIncidents() {
        Table table = table("incidents");
        List<String> alarms =
                table.rows().stream().map(r -> r.get(2)).distinct().toList();
        assertTrue(alarms.containsAll(List.of("ph-low", "low-oxygen", "probe-silent")), alarms.toString());
        assertTrue(table.rows().stream().noneMatch(r -> r.get(1).equals("still stands")));
    }

    @Test
    void everyTableBecomesAFileThatReadsBackCellByCell(@TempDir Path folder) throws IOException {
        List<Path> files = ReportWriter.csv(report(), folder);
        assertEquals(report().tables().size(), files.stream().distinct().count());
        for (int i = 0; i < files.size(); i++) {
            String text = Files.readString(files.get(i));
            assertEquals(
                    report().tables().get(i).rows().size() + 1,
                    text.lines().count(),
                    files.get(i).toString());
        }
    }

    @Test
    void whatWasTypedBecomesNeitherMarkupNorFormula() {
        Table table =
                new Table("t", List.of("a", "b"), List.of(List.of("=1+2", "say \"x\", y"), List.of("-3.5", "a|b")));
        assertEquals("a,b\n'=1+2,\"say \"\"x\"\", y\"\n-3.5,a|b\n", ReportWriter.csv(table));
    }

    /** The same season with an entry taken back, at a site that reads US units. */
    private static SeasonReport usReport() throws IOException {
        String yaml = Files.readString(SAMPLES.resolve("sites").resolve("larkfield-season.yaml"))
                .replace("units: metric", "units: us");
        SeasonRun run = new SeasonRun(assertInstanceOf(SiteFileResult.Good.class, SiteFileReader.read(yaml, "us.yaml"))
                .siteFile());
        LINES.forEach(run::accept);
        OperatorEntry.CropHarvest first =
                entries(OperatorEntry.CropHarvest.class).get(0);
        run.accept(new RecordedLine.Entry(new OperatorEntry.Withdraw(
                LINES.get(LINES.size() - 1).time(), first.word(), first.at(), 1, "wrong bed")));
        return new SeasonReport(run.finish().orElseThrow());
    }

    @Test
    void aSiteThatReadsUsUnitsGetsThemAndWhatWasTakenBackCountsNoMore() throws IOException {
        SeasonReport us = usReport();
        String text = ReportWriter.markdown(us);
        assertTrue(text.contains("temperature in fish-tank (fish-temp, F)"), text);
        assertTrue(text.contains("| total lb | mean oz |"), text);
        assertTrue(!text.contains(" kg") && !text.contains("Cel") && !text.contains(" m2"), text);
        Table crops = us.tables().stream()
                .filter(t -> t.name().equals("crops"))
                .findFirst()
                .orElseThrow();
        OperatorEntry.CropHarvest gone =
                entries(OperatorEntry.CropHarvest.class).get(0);
        Table before = table("crops");
        int row = before.rows().stream().map(r -> r.get(0)).toList().indexOf(gone.crop());
        assertEquals(cell(before, row, "harvests") - 1, cell(crops, row, "harvests"), 0);
        assertEquals(
                (cell(before, row, "fresh kg") - gone.massG() / 1000) / 0.45359237, cell(crops, row, "fresh lb"), 0.02);
        assertTrue(text.contains("wrong bed"), text);
    }
}
