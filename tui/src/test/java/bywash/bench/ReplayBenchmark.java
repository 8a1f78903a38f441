package bywash.bench;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Replay: lines a second on one core after warm-up, and a heap that stays flat however long the recording. */
class ReplayBenchmark {
    private static final long SHORT = 1_000_000;
    private static final long LONG = 4_000_000;
    private static final int PASSES = 7;

    @TempDir
    Path dir;

    @Test
    void linesASecondAndAFlatHeap() throws Exception {
        Path site = Program.site(dir, 1883);
        Path file = dir.resolve("short.jsonl");
        long lines = LongRecording.write(file, SHORT);
        pass(site, file);
        pass(site, file);
        double[] seconds = IntStream.range(0, PASSES)
                .mapToDouble(i -> pass(site, file))
                .sorted()
                .toArray();
        Budget.least(
                "replay after warm-up, decode to alarm lines, one thread, median of " + PASSES + " passes",
                lines / seconds[PASSES / 2],
                250_000,
                "lines/s");
        Budget.note("the fastest of them", lines / seconds[0], "lines/s");
        double whole = process(site, file);
        Budget.note("replay of " + lines + " lines, whole process, 64 MB heap", lines / whole, "lines/s");
        Path longer = dir.resolve("long.jsonl");
        long more = LongRecording.write(longer, LONG);
        double wholeLonger = process(site, longer);
        Budget.note("replay of " + more + " lines, whole process, 64 MB heap", more / wholeLonger, "lines/s");
        Budget.note("cost a line, the longer over the shorter", wholeLonger / more * lines / whole, "times");
        Files.delete(longer);
    }

    private static double pass(Path site, Path file) {
        try {
            return read(site, file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double read(Path site, Path file) throws IOException {
        if (!(SiteFileReader.read(site) instanceof SiteFileResult.Good good)) {
            throw new IllegalStateException("the demo's site is faulty");
        }
        SiteFile siteFile = good.siteFile();
        Pipeline pipeline = new Pipeline(siteFile, t -> {}, r -> {});
        long start = System.nanoTime();
        try (RecordingReader reader = RecordingReader.open(file, (line, what, right) -> {
            throw new IllegalStateException(line + ": " + what);
        })) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                pipeline.accept(line);
            }
        }
        pipeline.finish();
        return (System.nanoTime() - start) / 1e9;
    }

    private double process(Path site, Path file) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(Program.java(
                        List.of("-Xmx64m"), "replay", file.toString(), "--site", site.toString(), "--headless"))
                .redirectOutput(dir.resolve("out").toFile())
                .redirectError(dir.resolve("err").toFile())
                .start();
        int code = process.waitFor();
        if (code != 0) {
            throw new IllegalStateException("replay ended with " + code + ": " + Files.readString(dir.resolve("err")));
        }
        return (System.nanoTime() - start) / 1e9;
    }
}
