package bywash.tui.bench;

import bywash.bench.Budget;
import bywash.ingest.journal.JournalReader;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.samples.SampleRecordings;
import bywash.tui.report.JournalSeason;
import bywash.tui.report.ReportWriter;
import bywash.tui.report.SeasonReport;
import bywash.tui.watch.Station;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a year's journal weighs, and how long it takes to begin again on it, to draw a month and to report the season. */
final class JournalBenchmark {
    private static final int TRENDS = 9;
    private static final int SLICES = 76;

    @TempDir
    Path dir;

    private interface Work {
        void run() throws Exception;
    }

    private static double seconds(Work work) throws Exception {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e9;
    }

    @Test
    void aYearOfSevenProbes() throws Exception {
        String text;
        try (InputStream in = SampleRecordings.class.getResourceAsStream("/bywash/samples/sites/larkfield.yaml")) {
            if (in == null) {
                throw new IllegalStateException("the demo's site is missing");
            }
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        SiteFile file = SiteFileReader.read(text, "larkfield.yaml") instanceof SiteFileResult.Good good
                ? good.siteFile()
                : null;
        if (file == null) {
            throw new IllegalStateException("the demo's site is faulty");
        }
        YearJournal.write(dir);
        Budget.most("journal of a year of seven probes", Files.size(dir.resolve("larkfield.db")) / 1e6, 500, "MB");
        trend();
        for (String which : new String[] {"first", "again"}) {
            Budget.most("season report of a year, Markdown, " + which, seconds(() -> report(file)), 10, "s");
        }
        for (String which : new String[] {"first", "again"}) {
            Budget.most("restart of the watch on it, " + which, seconds(() -> restart(file)), 10, "s");
        }
    }

    private void trend() throws Exception {
        Instant to = YearJournal.end();
        double worst = 0;
        try (JournalReader journal = JournalReader.open(dir, "larkfield")) {
            for (int i = 0; i < TRENDS; i++) {
                Instant end = to.minus(Duration.ofDays(30L * i));
                double took = seconds(() -> {
                    int got = journal.history()
                            .buckets("fish-temp", end.minus(Duration.ofDays(30)), end, SLICES)
                            .size();
                    if (got != SLICES) {
                        throw new IllegalStateException(got + " slices");
                    }
                });
                worst = Math.max(worst, took);
            }
        }
        Budget.most("a month's trend of one probe, slowest of " + TRENDS, 1000 * worst, 100, "ms");
    }

    private void report(SiteFile file) throws Exception {
        try (JournalReader journal = JournalReader.open(dir, "larkfield")) {
            String report = ReportWriter.markdown(
                    new SeasonReport(JournalSeason.of(file, journal).orElseThrow()));
            if (!report.contains("autumn")) {
                throw new IllegalStateException("the report misses the cohort");
            }
        }
    }

    private void restart(SiteFile file) throws Exception {
        Station station = Station.open(file, dir, YearJournal::end);
        if (station.watch().latest().snapshot().season() == null) {
            throw new IllegalStateException("no season after the restart");
        }
        station.watch().stop();
        station.watch().run(); // closes the journal
    }
}
