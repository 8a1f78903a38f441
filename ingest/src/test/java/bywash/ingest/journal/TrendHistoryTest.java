package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same readings give the same trend from the journal and from memory, and from adding them up by hand. */
class TrendHistoryTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    @TempDir
    Path dir;

    /** Values 0, 1, 2 ... every 20 s, with the eleventh and twelfth minute left out. */
    private static List<Double> values(int n) {
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            all.add(i / 3 == 10 || i / 3 == 11 ? Double.NaN : i);
        }
        return all;
    }

    private static MinuteMeans minutes(int n) {
        MinuteMeans minutes = new MinuteMeans();
        List<Double> values = values(n);
        for (int i = 0; i < n; i++) {
            if (!Double.isNaN(values.get(i))) {
                minutes.add("ph", T0.plusSeconds(20L * i), values.get(i));
            }
        }
        return minutes;
    }

    @Test
    void addsReadingsUpToMinutes() {
        MinuteMeans minutes = minutes(10);
        assertEquals(
                List.of(
                        new Rollup("ph", T0, 3, 1, 0, 2),
                        new Rollup("ph", T0.plusSeconds(60), 3, 4, 3, 5),
                        new Rollup("ph", T0.plusSeconds(120), 3, 7, 6, 8)),
                minutes.drain());
        assertEquals(List.of(), minutes.drain());
        assertEquals(List.of(new Rollup("ph", T0.plusSeconds(180), 1, 9, 9, 9)), minutes.finish());
    }

    @Test
    void givesBucketsWithTheGapLeftOut() throws Exception {
        List<TrendBucket> right = List.of(
                new TrendBucket(0, 15, 0, 7, 14),
                new TrendBucket(1, 15, 15, 22, 29),
                new TrendBucket(2, 9, 36, 40, 44));
        try (Journal journal = Journal.open(dir, "larkfield", InstantSource.fixed(T0))) {
            journal.appendRollups(minutes(48).drain());
            TrendHistory history = journal.history();
            assertEquals(right, history.buckets("ph", T0, T0.plusSeconds(900), 3));
            assertEquals(
                    List.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 12, 13, 14),
                    history.buckets("ph", T0, T0.plusSeconds(900), 15).stream()
                            .map(TrendBucket::slice)
                            .toList());
            assertEquals(List.of(), history.buckets("none", T0, T0.plusSeconds(900), 3));
            assertEquals(List.of(), history.buckets("ph", T0, T0, 3));
        }
    }

    @Test
    void givesAMonthOfAYearsSevenProbes() throws Exception {
        try (Journal journal = Journal.open(dir, "larkfield", InstantSource.fixed(T0))) {
            for (int day = 0; day < 32; day++) {
                List<Rollup> all = new ArrayList<>();
                for (int i = 0; i < 1440 * 7; i++) {
                    Instant minute = T0.plus(Duration.ofDays(day)).plusSeconds(i / 7 * 60L);
                    all.add(new Rollup("probe-" + i % 7, minute, 6, day, day - 1, day + 1));
                }
                journal.appendRollups(all);
            }
            long began = System.nanoTime();
            List<TrendBucket> month =
                    journal.history().buckets("probe-3", T0.plus(Duration.ofDays(1)), T0.plus(Duration.ofDays(31)), 60);
            System.out.println("a month's trend: " + (System.nanoTime() - began) / 1_000_000 + " ms");
            assertEquals(60, month.size());
            assertEquals(1, month.get(0).mean(), 1e-9);
            assertEquals(720 * 6, month.get(59).count());
            assertTrue(month.get(59).low() == 29 && month.get(59).high() == 31);
        }
    }
}
