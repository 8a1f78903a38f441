package bywash.rules.detect;

import bywash.rules.detect.RampGlr.Candidate;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;

/**
 * Decides, for one vessel's volume in litres over minutes, whether water flows in or out that the known cycles do not
 * explain. Thresholds: a log likelihood ratio of 20 is about one false alarm in e^20 independent looks; the rate must
 * also clear the learned spread of fill slopes threefold.
 */
final class VesselFlow {
    /** What the volume alone says. */
    enum Motion {
        LEARNING,
        STEADY,
        IN,
        OUT,
        DRAINING_BACK
    }

    private static final double LOG_RATIO = 20;
    private static final double FLOOR_L_MIN = 0.3;
    private static final double LOOK_BACK_MIN = 0.6;
    private static final double GUARD_MIN = 0.75;
    private static final double STILL_AFTER_MIN = 20;
    private static final double RESTART_GRACE_MIN = 10;

    private record Point(double tMin, double volumeL) {}

    private final SpikeGuard guard;
    private final FillPhase fill;
    private final RampGlr glr = new RampGlr(1.0, 0.5);
    private final SlowDrift slow;
    private final double bedsL;
    private final double pipesL;
    private final ArrayDeque<Point> recent = new ArrayDeque<>();
    private final ArrayDeque<Point> pending = new ArrayDeque<>();
    private Motion motion = Motion.LEARNING;
    private @Nullable Candidate flow;
    private @Nullable Candidate lately;
    private double slowRate;
    private double onsetMin;
    private double drainEndMin = -1e9;
    private double drainStartMin = Double.NaN;
    private double drainStartL;
    private double longestDrainMin;
    private int episodes;
    private double lastMin = Double.NaN;
    private double firstMin = Double.NaN;
    private double fedMin = Double.NaN;
    private double offsetL;
    private double volumeL = Double.NaN;
    private double pumpOffMin = Double.NaN;
    private double pumpOffL;
    private double resumeMin = -1e9;

    /**
     * @param bedsL the most all siphon beds can hold, L; 0 where the vessel has no siphons
     * @param pipesL the most that drains back when the pump stops, beds aside, L
     */
    VesselFlow(double startNoiseL, double bedsL, double pipesL) {
        this.guard = new SpikeGuard(startNoiseL);
        this.fill = new FillPhase(bedsL > 0);
        this.slow = new SlowDrift(bedsL > 0);
        this.bedsL = bedsL;
        this.pipesL = pipesL;
    }

    void level(double tMin, double litres) {
        if (Double.isNaN(firstMin)) {
            firstMin = tMin;
        }
        if (!Double.isNaN(lastMin) && tMin - lastMin > 2) {
            gap();
        }
        if (!Double.isNaN(lastMin) && tMin <= lastMin) {
            return;
        }
        lastMin = tMin;
        if (guard.add(tMin, litres)) {
            sample(new Point(guard.tMin(), guard.volumeL()));
        }
    }

    private void gap() {
        guard.gap();
        recent.clear();
        interrupt();
    }

    private void interrupt() {
        pending.clear();
        fill.ended(guard.noiseL(), holding());
        glr.restart();
        fedMin = Double.NaN;
    }

    private void sample(Point p) {
        volumeL = p.volumeL();
        recent.addLast(p);
        while (recent.size() > 4 && p.tMin() - recent.getFirst().tMin() > 1.5) {
            recent.removeFirst();
        }
        if (suspended(p.tMin())) {
            return;
        }
        slow.add(p.tMin(), p.volumeL(), holding());
        Point earlier = earlier(p, LOOK_BACK_MIN);
        if (earlier != null) {
            double minutes = p.tMin() - earlier.tMin();
            double rise = p.volumeL() - earlier.volumeL();
            fill.rough(rise / minutes);
            if (Double.isNaN(pumpOffMin) && fill.draining(rise, minutes, guard.noiseL())) {
                drain(p, earlier);
                return;
            }
        }
        if (p.tMin() - drainEndMin > 0.35) {
            drainOver();
            pending.addLast(p);
        }
        while (!pending.isEmpty() && p.tMin() - pending.getFirst().tMin() >= GUARD_MIN) {
            feed(pending.removeFirst());
        }
    }

    private @Nullable Point earlier(Point p, double minutes) {
        Point found = null;
        for (Point each : recent) {
            if (p.tMin() - each.tMin() >= minutes) {
                found = each;
            }
        }
        return found;
    }

    private void drain(Point p, Point earlier) {
        if (Double.isNaN(drainStartMin)) {
            drainStartMin = earlier.tMin();
            drainStartL = earlier.volumeL();
            interrupt();
        }
        pending.clear();
        drainEndMin = p.tMin();
    }

    private void drainOver() {
        if (!Double.isNaN(drainStartMin) && !holding()) {
            episodes++;
            longestDrainMin = StrictMath.max(longestDrainMin, drainEndMin - drainStartMin);
        }
        drainStartMin = Double.NaN;
    }

    private void feed(Point p) {
        double slope = Double.isNaN(pumpOffMin) ? fill.fillLMin() : 0;
        if (!Double.isNaN(fedMin) && fill.learned()) {
            offsetL += slope * (p.tMin() - fedMin);
        }
        fedMin = p.tMin();
        if (Double.isNaN(pumpOffMin)) {
            fill.inside(p.tMin(), p.volumeL());
        }
        if (fill.learned()) {
            double noise = guard.noiseL();
            glr.add(p.tMin(), p.volumeL() - offsetL, noise * noise);
        }
    }

    private boolean holding() {
        return motion == Motion.IN || motion == Motion.OUT;
    }

    private boolean suspended(double tMin) {
        return tMin < resumeMin;
    }

    /** The pump is known to run or to stand. */
    void pump(double tMin, boolean on) {
        if (on == Double.isNaN(pumpOffMin)) {
            return;
        }
        pumpOffMin = on ? Double.NaN : tMin;
        pumpOffL = volumeL;
        resumeMin = tMin + (on ? RESTART_GRACE_MIN : STILL_AFTER_MIN);
        rebase();
        motion = on ? Motion.LEARNING : Motion.DRAINING_BACK;
    }

    /** Forgets what moved so far: after a planned change the balance starts anew. */
    void rebase() {
        interrupt();
        glr.clear();
        slow.clear();
        flow = null;
        lately = null;
        slowRate = 0;
        drainStartMin = Double.NaN;
        if (motion != Motion.LEARNING) {
            motion = Motion.STEADY;
        }
    }

    /** Starts measuring a rate from this moment. */
    Candidate mark(double tMin) {
        Candidate c = glr.mark(tMin);
        glr.keep(c);
        return c;
    }

    void decide(double nowMin) {
        if (suspended(nowMin) && !beyondHold()) {
            return;
        }
        switch (motion) {
            case LEARNING, STEADY, DRAINING_BACK -> look(nowMin);
            case IN, OUT -> follow(nowMin);
        }
    }

    private boolean beyondHold() {
        return !Double.isNaN(pumpOffMin)
                && volumeL - pumpOffL > bedsL + pipesL + 6 * guard.noiseL()
                && motion != Motion.IN;
    }

    private void look(double nowMin) {
        if (beyondHold()) {
            begin(Motion.IN, pumpOffMin, (volumeL - pumpOffL) / StrictMath.max(1, nowMin - pumpOffMin));
            return;
        }
        if (!Double.isNaN(drainStartMin)) {
            double span = nowMin - drainStartMin;
            double rise = volumeL - drainStartL;
            boolean endless = episodes >= 15 && span > 1.5 * longestDrainMin + 2 && rise > 20;
            if (endless || rise > bedsL + 6 * guard.noiseL()) {
                begin(Motion.IN, drainStartMin, rise / span);
                return;
            }
        }
        if (!fill.learned() || nowMin - firstMin < (bedsL > 0 ? 30 : 5)) {
            motion = Motion.LEARNING;
            return;
        }
        motion = Motion.STEADY;
        Candidate in = glr.best(true);
        Candidate out = glr.best(false);
        if (convincing(in, nowMin)) {
            begin(Motion.IN, in);
        } else if (convincing(out, nowMin)) {
            begin(Motion.OUT, out);
        } else if (slow.sign() != 0) {
            double rate = slow.differenceL() / slow.windowMin();
            begin(slow.sign() > 0 ? Motion.IN : Motion.OUT, nowMin - slow.windowMin() * 0.75, rate * 1.5);
        }
    }

    private boolean convincing(@Nullable Candidate c, double nowMin) {
        if (c == null || c.logRatio() < LOG_RATIO) {
            return false;
        }
        double rate = StrictMath.abs(c.rateLMin());
        double moved = rate * (nowMin - c.onsetMin());
        return rate > FLOOR_L_MIN + 3 * fill.spreadLMin() && moved > 3 + 2 * guard.noiseL();
    }

    private void begin(Motion to, @Nullable Candidate c) {
        if (c == null) {
            return;
        }
        motion = to;
        flow = c;
        onsetMin = c.onsetMin();
        glr.keep(c);
        lately = null;
    }

    private void begin(Motion to, double fromMin, double rate) {
        motion = to;
        flow = null;
        slowRate = rate;
        onsetMin = fromMin;
        lately = null;
    }

    /** A flow stands: it ends when the last minutes show clearly less than its rate. */
    private void follow(double nowMin) {
        if (lately == null) {
            lately = glr.mark(lastMin);
            return;
        }
        double age = nowMin - lately.onsetMin();
        double rate = StrictMath.abs(rateLMin());
        double sign = motion == Motion.IN ? 1 : -1;
        double now = lately.rateLMin() * sign;
        boolean sure = lately.seLMin() < 0.08 * rate + 0.1;
        if (age > (bedsL > 0 ? 6 : 2) && sure && now + 2 * lately.seLMin() < 0.5 * rate) {
            rebase();
        } else if (age > 20 || (age > 8 && sure)) {
            lately = glr.mark(lastMin);
        }
    }

    Motion motion() {
        return motion;
    }

    /** Signed, L/min. */
    double rateLMin() {
        return flow != null ? flow.rateLMin() : slowRate;
    }

    double rateSeLMin() {
        return flow != null ? flow.seLMin() : StrictMath.abs(slowRate) * 0.3;
    }

    double onsetMin() {
        return onsetMin;
    }

    double volumeL() {
        return volumeL;
    }

    double lastMin() {
        return lastMin;
    }

    double noiseL() {
        return guard.noiseL();
    }

    /** Words on what can be found while still learning. */
    String learningWords() {
        return bedsL > 0
                ? "Learning the siphon cycles; until then only a rise of more than " + StrictMath.round(bedsL)
                        + " L is told from them."
                : "Learning the noise of the level; five minutes.";
    }
}
