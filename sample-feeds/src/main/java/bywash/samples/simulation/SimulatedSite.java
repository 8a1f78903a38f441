package bywash.samples.simulation;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Entry;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The invented site as the lines its broker would carry. */
public final class SimulatedSite {
    private final SiteRun run;
    private final long seconds;
    private final ArrayDeque<RecordedLine> ready = new ArrayDeque<>();
    private long second;

    public SimulatedSite(SiteModel model, List<Action> actions, Instant start, Duration length, long seed) {
        this.run = new SiteRun(model, actions, start, seed, new Lines());
        this.seconds = length.getSeconds();
    }

    /** The next line; null at the end. */
    public @Nullable RecordedLine next() {
        while (ready.isEmpty() && second < seconds) {
            run.step();
            second++;
        }
        return ready.poll();
    }

    /** What is really so at the latest second. */
    public Truth truth() {
        return run.truth();
    }

    private final class Lines implements SiteSink {
        @Override
        public void level(String vessel, Instant at, double mm) {
            message(at, "larkfield/" + vessel + "/level", String.format(Locale.ROOT, "%.2f", mm / 10));
        }

        @Override
        public void pump(Instant at, boolean on) {
            message(at, "larkfield/pump", on ? "on" : "off");
        }

        @Override
        public void entry(OperatorEntry entry) {
            ready.add(new Entry(entry));
        }

        @Override
        public void quality(Instant at, WaterSample sample) {
            message(at, "larkfield/fish", sample.senml());
            message(at, "larkfield/do", sample.oxygen());
            message(at, "larkfield/orp", sample.orp());
        }

        private void message(Instant at, String topic, String payload) {
            ready.add(new Message(at, topic, payload.getBytes(StandardCharsets.UTF_8), 0, false));
        }
    }
}
