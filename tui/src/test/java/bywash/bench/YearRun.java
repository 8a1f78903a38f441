package bywash.bench;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** A year of the demo's quiet sample through the rules; a line for every thirty days: lines, seconds, bytes in use. */
final class YearRun {
    private static final Duration MONTH = Duration.ofDays(30);
    private static final int MONTHS = 12;

    private YearRun() {}

    public static void main(String[] args) throws IOException {
        if (!(SiteFileReader.read(Path.of(args[0])) instanceof SiteFileResult.Good good)) {
            throw new IllegalStateException("the site is faulty");
        }
        Pipeline pipeline = new Pipeline(good.siteFile(), t -> {}, r -> {});
        List<Message> quiet = LongRecording.quiet();
        Instant first = quiet.get(0).time();
        Duration length = LongRecording.length(quiet);
        Duration later = Duration.ZERO;
        for (int month = 1; month <= MONTHS; month++) {
            long start = System.nanoTime();
            long lines = 0;
            while (later.compareTo(MONTH.multipliedBy(month)) < 0) {
                for (Message m : quiet) {
                    pipeline.accept(new Message(m.time().plus(later), m.topic(), m.payload(), m.qos(), m.retain()));
                    lines++;
                }
                later = later.plus(length);
            }
            double seconds = (System.nanoTime() - start) / 1e9;
            System.gc();
            long used =
                    Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
            System.out.println(lines + " " + seconds + " " + used + " " + first.plus(later));
        }
        if (pipeline.messages() == 0) {
            throw new IllegalStateException("nothing was read");
        }
    }
}
