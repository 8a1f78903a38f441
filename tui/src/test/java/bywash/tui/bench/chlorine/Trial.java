package bywash.tui.bench.chlorine;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.Residual;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.engine.Snapshot;
import bywash.samples.SampleRecordings;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.SimulatedSite;
import bywash.samples.simulation.SiteModel;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/** One simulated incident played through the watch's own pipeline, with the truth of each minute beside the estimate. */
final class Trial {
    /** One minute. */
    record Minute(double tMin, double trueUgL, ResidualEstimate estimate, double trueBatchMgL, Residual batch) {
        boolean batchInside() {
            return trueBatchMgL >= batch.lowMgL() - 0.005 && trueBatchMgL <= batch.highMgL() + 0.005;
        }

        boolean inside() {
            return trueUgL >= estimate.lowUgL() - 0.5 && trueUgL <= estimate.highUgL() + 0.5;
        }
    }

    private final OrpResponse orp;
    private final SimulatedSite site;
    private final Pipeline pipeline;
    private final List<AlarmTransition> raised = new ArrayList<>();
    private final List<Minute> minutes = new ArrayList<>();

    Trial(String disinfectant, List<Action> actions, int lengthMin, long seed, OrpResponse.Fault fault, double atMin) {
        this(
                SiteModel.larkfield(),
                Map.of("disinfectant: chlorine, residual: 0.9", "disinfectant: " + disinfectant),
                actions,
                lengthMin,
                seed,
                new OrpResponse(new SplittableRandom(seed + 7919), fault, atMin));
    }

    /** @param file what the site file says instead of what it says of Larkfield */
    Trial(
            SiteModel model,
            Map<String, String> file,
            List<Action> actions,
            int lengthMin,
            long seed,
            OrpResponse response) {
        orp = response;
        site = new SimulatedSite(model, actions, SampleRecordings.start(), Duration.ofMinutes(lengthMin), seed);
        pipeline = new Pipeline(
                siteFile(file),
                t -> {
                    if (t.state() == AlarmState.UNACKNOWLEDGED) {
                        raised.add(t);
                    }
                },
                reading -> {});
    }

    /** Plays it to its end. */
    Trial play() {
        double nextMin = 0;
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            double tMin =
                    Duration.between(SampleRecordings.start(), line.time()).toMillis() / 60_000.0;
            RecordedLine heard =
                    line instanceof Message message && message.topic().equals("larkfield/orp")
                            ? potential(message, tMin)
                            : line;
            if (heard != null) {
                pipeline.accept(heard);
            }
            if (tMin >= nextMin) {
                nextMin = Math.floor(tMin) + 1;
                minutes.add(minute(tMin));
            }
        }
        pipeline.finish();
        return this;
    }

    private Minute minute(double tMin) {
        Snapshot now = pipeline.snapshot();
        List<BatchView> batches = now.care().batches();
        return new Minute(
                tMin,
                site.truth().residualUgL(),
                now.residual(),
                site.truth().reserveResidualMgL(),
                batches.isEmpty() ? Residual.ZERO : batches.get(0).residual());
    }

    private @org.jspecify.annotations.Nullable Message potential(Message message, double tMin) {
        double mv = orp.read(tMin, site.truth().residualUgL(), 0);
        byte[] text = String.format(Locale.ROOT, "%.1f", mv).getBytes(StandardCharsets.UTF_8);
        return Double.isNaN(mv) ? null : new Message(message.time(), message.topic(), text, 0, false);
    }

    List<Minute> minutes() {
        return minutes;
    }

    /** Minute of the first alarm of a kind; infinite where it was not raised. */
    double firstMin(AlarmKind kind) {
        return raised.stream()
                .filter(t -> t.kind() == kind)
                .map(AlarmTransition::at)
                .findFirst()
                .map(at -> minute(at))
                .orElse(Double.POSITIVE_INFINITY);
    }

    long count(AlarmKind kind) {
        return raised.stream().filter(t -> t.kind() == kind).count();
    }

    private static double minute(Instant at) {
        return Duration.between(SampleRecordings.start(), at).toMillis() / 60_000.0;
    }

    /** First minute at which the truth was above a limit; infinite where it never was. */
    double trueAboveMin(double limitUgL) {
        return minutes.stream()
                .filter(m -> m.trueUgL() > limitUgL)
                .mapToDouble(Minute::tMin)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static SiteFile siteFile(Map<String, String> instead) {
        try (InputStream in = SampleRecordings.class.getResourceAsStream("/bywash/samples/sites/larkfield.yaml")) {
            if (in == null) {
                throw new AssertionError("the demo site is missing");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            String with = text;
            for (Map.Entry<String, String> line : instead.entrySet()) {
                with = with.replace(line.getKey(), line.getValue());
            }
            if (SiteFileReader.read(with, "larkfield.yaml") instanceof SiteFileResult.Good good) {
                return good.siteFile();
            }
            throw new AssertionError("the demo site is faulty");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
