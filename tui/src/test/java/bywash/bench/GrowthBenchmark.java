package bywash.bench;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.tui.watch.Pipeline;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How cost grows: with a year of feed, and with the number of probes. */
class GrowthBenchmark {
    private static final int LINES = 200_000;
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");

    @TempDir
    Path dir;

    @Test
    void aYearInAHeapOf64Megabytes() throws Exception {
        Path site = Program.site(dir, 1883);
        Path out = dir.resolve("out");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        YearRun.class.getName(),
                        site.toString())
                .redirectOutput(out.toFile())
                .redirectError(dir.resolve("err").toFile())
                .start();
        int code = process.waitFor();
        if (code != 0) {
            throw new IllegalStateException(
                    "the year ended with " + code + ": " + Files.readString(dir.resolve("err")));
        }
        List<double[]> months = Files.readAllLines(out).stream()
                .map(l -> l.split(" "))
                .map(w -> new double[] {
                    Double.parseDouble(w[0]), Double.parseDouble(w[1]), Double.parseDouble(w[2]) / (1 << 20)
                })
                .toList();
        double[] second = months.get(1);
        double[] last = months.get(months.size() - 1);
        Budget.note(
                "a year of the demo's feed",
                months.stream().mapToDouble(m -> m[0]).sum(),
                "lines");
        Budget.note("heap in use after the second month", second[2], "MB");
        Budget.most("heap in use after the twelfth month", last[2], 1.1 * second[2], "MB");
        Budget.most("cost a line, twelfth month over second", last[1] / last[0] * second[0] / second[1], 1.2, "times");
    }

    @Test
    void costOfALineByProbes() {
        double few = 0;
        for (int i = 0; i < 5; i++) {
            run(32);
        }
        for (int probes : new int[] {8, 32, 128}) {
            run(probes);
            double micros = run(probes) / LINES * 1e6;
            Budget.note("replay, " + probes + " probes, cost a line", micros, "us");
            few = few == 0 ? micros : few;
            Budget.note("the same, over 8 probes", micros / few, "times");
        }
    }

    private static double run(int probes) {
        SiteFile site = ManyProbes.site(1883, probes);
        Pipeline pipeline = new Pipeline(site, t -> {}, r -> {});
        long start = System.nanoTime();
        for (int i = 0; i < LINES; i++) {
            int probe = i % probes;
            Instant at = START.plusMillis(i / probes * 10_000L + probe * 10L);
            byte[] value = ("7." + (i / probes + probe) % 10).getBytes(StandardCharsets.US_ASCII);
            pipeline.accept(new Message(at, ManyProbes.topic(probe), value, 0, false));
        }
        pipeline.finish();
        return (System.nanoTime() - start) / 1e9;
    }
}
