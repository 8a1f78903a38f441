package bywash.rules.detect;

import bywash.rules.detect.DrainWatch.Beyond;
import bywash.rules.detect.RampGlr.Candidate;
import org.jspecify.annotations.Nullable;

/** Asks the views of one vessel in turn whether they show a flow: the first that does is believed. */
final class FlowSigns {
    private final LevelViews views;
    private final PumpSense pump;

    FlowSigns(LevelViews views, PumpSense pump) {
        this.views = views;
        this.pump = pump;
    }

    /**
     * What a look showed.
     *
     * @param motion without a sign: whether it learns, is steady, or may be draining back
     * @param sign of a flow; null without
     * @param slowedDown whether a sudden flow has slowed down as pipes do, so that it was the pump
     */
    record Look(Motion motion, @Nullable FlowSign sign, boolean slowedDown) {
        private static Look none(Motion motion) {
            return new Look(motion, null, false);
        }

        private static Look of(FlowSign sign) {
            return new Look(sign.motion(), sign, false);
        }
    }

    /** While the pump stands: more than can drain back, or a rise that does not slow down as draining back does. */
    boolean entersWithoutPump(double nowMin, boolean plannedRuns) {
        return standingPump(nowMin, plannedRuns) != null;
    }

    private @Nullable FlowSign standingPump(double nowMin, boolean plannedRuns) {
        double risesOn = plannedRuns ? Double.NaN : pump.risesOnLMin(nowMin, views);
        boolean steady = !Double.isNaN(risesOn);
        if (!steady && !pump.beyondHold(views)) {
            return null;
        }
        PumpStop stop = pump.stop();
        double rate = steady ? risesOn : stop.wholeLMin(nowMin, views.volumeL());
        return FlowSign.ofStandingPump(stop.offMin(), stop.drainedBackMin(), rate);
    }

    /**
     * Looks, while no flow is known here.
     *
     * @param plannedRuns whether water is let in as planned
     */
    Look look(double nowMin, boolean plannedRuns) {
        FlowSign standing = standingPump(nowMin, plannedRuns);
        if (standing != null) {
            return Look.of(standing);
        }
        Beyond beyond = views.beyondDrains(nowMin, plannedRuns);
        if (beyond != null && !pump.maybeStopped()) {
            return Look.of(FlowSign.ofRise(beyond, views.siphons()));
        }
        return views.learned(nowMin) ? slopes(nowMin) : Look.none(Motion.LEARNING);
    }

    private Look slopes(double nowMin) {
        FlowEvidence evidence = views.evidence();
        Candidate in = evidence.best(true);
        Candidate out = evidence.best(false);
        boolean comes = evidence.convinces(in, nowMin, views.noiseL());
        boolean goes = evidence.convinces(out, nowMin, views.noiseL());
        double drainMin = pump.maybeDrainMin(views);
        if (pump.watching()) {
            return watched(nowMin, in, out);
        }
        if (in != null && comes && pump.maybePump(in, views)) {
            pump.watch(nowMin, in, views);
            return watched(nowMin, in, out);
        }
        if (out != null && goes && pump.maybePump(out, views)) {
            pump.watch(nowMin, out, views);
            return Look.none(Motion.STEADY);
        }
        if (in != null && comes && nowMin - in.onsetMin() >= drainMin) {
            return Look.of(FlowSign.ofSlopes(Motion.IN, in, views.siphons()));
        }
        if (out != null && goes && !comes && nowMin - out.onsetMin() >= drainMin) {
            return Look.of(FlowSign.ofSlopes(Motion.OUT, out, views.siphons()));
        }
        return pump.maybeStopped() ? Look.none(Motion.STEADY) : means(nowMin);
    }

    private Look means(double nowMin) {
        SlowWindow window = views.slowFlow();
        if (window == null) {
            return Look.none(Motion.STEADY);
        }
        Motion to = window.sign() > 0 ? Motion.IN : Motion.OUT;
        return Look.of(FlowSign.ofMeans(to, nowMin - window.ageMin(), window.rateLMin()));
    }

    /** Without a pump's word, a sudden flow is watched for some minutes: does it slow down? */
    private Look watched(double nowMin, @Nullable Candidate in, @Nullable Candidate out) {
        boolean rises = in != null && (out == null || in.logRatio() > out.logRatio());
        Motion meanwhile = rises ? Motion.DRAINING_BACK : Motion.STEADY;
        return switch (pump.outcome(nowMin, views)) {
            case WATCHING -> {
                pump.watchOn(nowMin, views);
                yield Look.none(meanwhile);
            }
            case FLOWS_ON -> {
                pump.watched();
                Candidate c = rises ? in : out;
                Motion to = rises ? Motion.IN : Motion.OUT;
                yield c == null ? Look.none(meanwhile) : Look.of(FlowSign.ofSlopes(to, c, views.siphons()));
            }
            case SLOWED_DOWN -> {
                pump.stop().slowedDown(nowMin, rises);
                yield new Look(Motion.STEADY, null, true);
            }
        };
    }
}
