package bywash.rules.detect;

import bywash.rules.detect.DrainWatch.Beyond;
import bywash.rules.detect.RampGlr.Candidate;
import bywash.rules.detect.RecentVolumes.Point;
import bywash.rules.detect.Stretch.Usual;
import java.time.Duration;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;

/**
 * Decides, for one vessel's volume in litres over minutes, whether water flows in or out that the known cycles do not
 * explain. A log likelihood ratio of 16 is about one false alarm in e^16 independent looks; the spread of fill slopes
 * beyond noise counts against it as a standing error of the rate.
 */
final class VesselFlow {
    private static final double LOG_RATIO = 16;
    /** With samples farther apart drains and fills blur; then slow means alone are heard. */
    private static final double RESOLVES_DRAINS_MIN = 0.5;

    private static final double STILL_AFTER_MIN = 20;
    private static final double RESTART_GRACE_MIN = 10;
    /** Pipes have mostly drained back so long after a pump stop. */
    private static final double DRAINED_BACK_MIN = 4;

    private static final double RISES_ON_MIN = 6;
    private static final double LEAST_RISE_L_MIN = 1.5;
    private static final double STEADY_SHARE = 0.8;
    private static final double MOST_LOSS_L_MIN = 8;
    private static final int PASTS_KEPT = 6;
    private static final double BRIM_SIGMAS = 3;
    /** So long after it stood at its brim a vessel's mean level tells nothing of what came in. */
    private static final double BRIM_FORGOTTEN_MIN = 120;

    /** Pipes that empty or fill have done so this long after it was seen to slow down. */
    private static final double TAIL_MIN = 7;

    private final SpikeGuard guard;
    private final FillPhase fill;
    private final RampGlr glr = new RampGlr(1.0, 0.5);
    private final SlowDrift slow;
    private final BedBook book;
    private final HourlyChange hour;
    private final double bedsL;
    private final double pipesL;
    private final RecentVolumes recent = new RecentVolumes();
    private final Swing swing = new Swing();
    private final PhaseFeed feed;
    private final FlowEvidence evidence;
    private final FlowHistory history = new FlowHistory();
    private final FoundFlow found;
    private Motion motion = Motion.LEARNING;
    private final double everyMin;
    private final boolean pumpTold;
    private final boolean mayDrainBack;
    private final PumpGuess guess = new PumpGuess();
    private final DrainWatch drains;
    private double lastMin = Double.NaN;
    private double firstMin = Double.NaN;
    private double volumeL = Double.NaN;
    private double pumpOffMin = Double.NaN;
    private double pumpOffL;
    private double resumeMin = -1e9;
    private double brimL = Double.POSITIVE_INFINITY;
    private double brimMin = -1e9;
    private final ArrayDeque<Past> pasts = new ArrayDeque<>();
    private boolean plannedRuns;

    /** A flow that was found and is over, or was left for something declared; signed litres. */
    record Past(double fromMin, double untilMin, double litres, double seL, double rateLMin) {}

    VesselFlow(double startNoiseL, Hold hold, Duration every, Pump pump) {
        this.pumpTold = pump == Pump.TOLD;
        this.mayDrainBack = pump != Pump.NONE;
        this.everyMin = every.toMillis() / 60_000.0;
        this.guard = new SpikeGuard(startNoiseL);
        this.fill = new FillPhase(hold.bedsL() > 0);
        this.slow = new SlowDrift(hold.bedsL() > 0);
        this.hour = new HourlyChange(hold.bedsL() > 0);
        this.bedsL = hold.bedsL();
        this.drains = new DrainWatch(hold, pump == Pump.TOLD);
        this.book = new BedBook(hold.bedsL() > 0 ? hold.beds() : 0);
        this.feed = new PhaseFeed(new PhaseFeed.Readers(fill, glr, book, drains, this::inside), recent, everyMin);
        this.evidence = new FlowEvidence(glr, fill, book, bedsL > 0, everyMin <= RESOLVES_DRAINS_MIN);
        this.pipesL = hold.pipesL();
        this.found = new FoundFlow(history, hold.bedsL() > 0);
    }

    /** The volume at which it overflows: what runs over there shows in no level. */
    VesselFlow brim(double litres) {
        brimL = litres;
        return this;
    }

    void level(double tMin, double litres) {
        if (Double.isNaN(firstMin)) {
            firstMin = tMin;
        }
        if (!Double.isNaN(lastMin) && tMin - lastMin > StrictMath.max(2, 3.5 * everyMin)) {
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
        book.loosenBeds();
        recent.clear();
        interrupt();
    }

    private void interrupt() {
        feed.interrupt(phaseNow());
        history.restart();
    }

    private PhaseFeed.Now phaseNow() {
        return new PhaseFeed.Now(guard.noiseL(), Double.isNaN(pumpOffMin), holding() || plannedRuns);
    }

    private void sample(Point p) {
        volumeL = p.volumeL();
        recent.add(p);
        if (bedsL > 0) {
            swing.add(p.tMin(), p.volumeL());
        }
        if (!pumpTold && bedsL > 0) {
            guessPump(p);
        }
        if (suspended(p.tMin())) {
            if (p.tMin() - pumpOffMin > DRAINED_BACK_MIN) {
                history.add(p.tMin(), p.volumeL());
            }
            return;
        }
        slow.add(p.tMin(), p.volumeL(), holding() || plannedRuns);
        hour.add(p.tMin(), p.volumeL(), motion == Motion.STEADY && !plannedRuns);
        if (resolvesDrains() && fill.learned() && Double.isNaN(pumpOffMin)) {
            drains.sample(p, recent, known());
        }
        double lookBack = fill.lookBackMin(guard.noiseL());
        Point earlier = recent.earlier(lookBack);
        if (earlier != null) {
            double minutes = p.tMin() - earlier.tMin();
            double rise = p.volumeL() - earlier.volumeL();
            fill.rough(rise / minutes);
            if (Double.isNaN(pumpOffMin) && fill.draining(rise - knownInL(minutes), minutes, guard.noiseL())) {
                drain(p, earlier);
                return;
            }
        }
        feed.fill(p, lookBack, phaseNow());
    }

    /** What a found flow brings or takes, so that drains still stand out of it; of a loss so much that its end shows too. */
    private double knownInL(double minutes) {
        double least = motion == Motion.IN ? 0 : -MOST_LOSS_L_MIN;
        return holding() ? StrictMath.max(least, found.rateLMin()) * minutes : 0;
    }

    private void guessPump(Point p) {
        guess.add(p.tMin(), p.volumeL());
        if (!fill.learned() || holding()) {
            return;
        }
        boolean on = Double.isNaN(pumpOffMin);
        if (on && guess.standsStill(fill.fillLMin(), guard.noiseL())) {
            pump(p.tMin(), false);
        } else if (!on && guess.runs(fill.fillLMin(), guard.noiseL())) {
            pump(p.tMin(), true);
        }
    }

    private void drain(Point p, Point earlier) {
        boolean begins = !drains.running();
        feed.drain(p, earlier, phaseNow());
        if (begins) {
            history.restart();
        }
    }

    /** A volume inside a fill phase. At the overflow it tells nothing of what comes in. */
    private void inside(Point p) {
        if (p.volumeL() > brimL - BRIM_SIGMAS * guard.noiseL()) {
            brimMin = p.tMin();
            history.restart();
        } else {
            history.add(p.tMin(), p.volumeL());
        }
    }

    /** Whether water moves that was found here and that nobody declared. */
    boolean undeclared() {
        return holding() && !plannedRuns;
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
        book.loosenBeds();
        rebase();
        history.clear();
        swing.clear();
        motion = on ? Motion.LEARNING : Motion.DRAINING_BACK;
    }

    /** Water is let in as planned from here on, or no more. */
    void planned(boolean running) {
        rebase();
        plannedRuns = running;
        book.moving(running);
    }

    /** Forgets what moved so far: after a planned change the balance starts anew. */
    void rebase() {
        if (undeclared()) {
            double end = found.endMin();
            pasts.addLast(new Past(
                    found.onsetMin(),
                    Double.isNaN(end) ? lastMin : end,
                    movedL(lastMin),
                    movedSeL(lastMin),
                    found.rateLMin()));
            if (pasts.size() > PASTS_KEPT) {
                pasts.removeFirst();
            }
        }
        hour.disturbed();
        interrupt();
        glr.clear();
        book.loosenTotal();
        slow.clear();
        guess.clear();
        found.clear();
        drains.forget();
        if (motion != Motion.LEARNING) {
            motion = Motion.STEADY;
        }
    }

    /** Starts measuring a rate from this moment. */
    SlopeFit mark(double tMin) {
        return glr.mark(tMin);
    }

    /** Starts another in the place of one. */
    SlopeFit markAnew(SlopeFit old, double tMin) {
        glr.unmark(old);
        return glr.mark(tMin);
    }

    void decide(double nowMin) {
        if (suspended(nowMin) && !holding() && !entersWithoutPump(nowMin)) {
            return;
        }
        switch (motion) {
            case LEARNING, STEADY, DRAINING_BACK -> look(nowMin);
            case IN, OUT -> follow(nowMin);
        }
    }

    private boolean beyondHold() {
        return !Double.isNaN(pumpOffMin)
                && recent.sureL() - pumpOffL > bedsL + pipesL + 6 * guard.noiseL()
                && motion != Motion.IN;
    }

    /** While the pump stands: more than can drain back, or a rise that does not slow down as draining back does. */
    private boolean entersWithoutPump(double nowMin) {
        return beyondHold() || !Double.isNaN(risesOnLMin(nowMin));
    }

    /** The steady rise of a vessel whose pump has stood for a while, L/min; NaN where there is none. */
    private double risesOnLMin(double nowMin) {
        double from = pumpOffMin + DRAINED_BACK_MIN;
        if (!(nowMin - from >= RISES_ON_MIN) || motion == Motion.IN || plannedRuns) {
            return Double.NaN;
        }
        Slope first = slope(from, (from + nowMin) / 2);
        Slope then = slope((from + nowMin) / 2, nowMin);
        boolean steady = then.rateLMin() > LEAST_RISE_L_MIN
                && then.rateLMin() > 4.5 * then.seLMin()
                && then.rateLMin() > STEADY_SHARE * first.rateLMin();
        return steady ? then.rateLMin() : Double.NaN;
    }

    private void look(double nowMin) {
        double risesOn = risesOnLMin(nowMin);
        if (beyondHold() || !Double.isNaN(risesOn)) {
            double whole = (volumeL - pumpOffL) / StrictMath.max(1, nowMin - pumpOffMin);
            motion = Motion.IN;
            found.beginWithin(pumpOffMin, pumpOffMin + DRAINED_BACK_MIN, Double.isNaN(risesOn) ? whole : risesOn);
            return;
        }
        Beyond beyond = drains.beyond(nowMin, recent.sureL(), known(), evidence.hintsAtInflow());
        if (beyond != null) {
            begin(Motion.IN, beyond);
            return;
        }
        if (!learned(nowMin)) {
            motion = Motion.LEARNING;
            return;
        }
        motion = Motion.STEADY;
        Candidate in = evidence.best(true);
        Candidate out = evidence.best(false);
        boolean comes = evidence.convinces(in, nowMin, guard.noiseL());
        boolean goes = evidence.convinces(out, nowMin, guard.noiseL());
        if (guess.watching()) {
            watched(nowMin, in, out);
        } else if (in != null && comes && maybePump(in)) {
            guess.watch(nowMin, in.rateLMin(), glr.mark(lastMin));
            watched(nowMin, in, out);
        } else if (out != null && goes && maybePump(out)) {
            guess.watch(nowMin, out.rateLMin(), glr.mark(lastMin));
        } else if (comes || goes) {
            begin(comes ? Motion.IN : Motion.OUT, comes ? in : out);
        } else {
            SlowWindow window = slow.speaks(evidence.besideMeans(1), evidence.besideMeans(-1));
            if (window != null) {
                Motion to = window.sign() > 0 ? Motion.IN : Motion.OUT;
                begin(to, nowMin - window.ageMin(), window.rateLMin());
            }
        }
    }

    private boolean resolvesDrains() {
        return bedsL > 0 && everyMin <= RESOLVES_DRAINS_MIN;
    }

    private DrainWatch.Known known() {
        return new DrainWatch.Known(fill.fillLMin(), guard.noiseL(), slow.usualL(), holding() || plannedRuns);
    }

    private boolean learned(double nowMin) {
        return fill.learned() && guard.learned() && nowMin - firstMin >= (bedsL > 0 ? 30 : 5);
    }

    private boolean maybePump(Candidate c) {
        return !pumpTold && mayDrainBack && bedsL == 0 && PumpGuess.sudden(c.rateLMin());
    }

    /** Without a pump's word, a sudden flow is watched for some minutes: does it slow down? */
    private void watched(double nowMin, @Nullable Candidate in, @Nullable Candidate out) {
        boolean rises = in != null && (out == null || in.logRatio() > out.logRatio());
        motion = rises ? Motion.DRAINING_BACK : Motion.STEADY;
        switch (guess.outcome(nowMin)) {
            case WATCHING -> {
                if (guess.wantsFresh(nowMin)) {
                    guess.fresh(glr.mark(lastMin));
                }
            }
            case FLOWS_ON -> {
                guess.clear();
                begin(rises ? Motion.IN : Motion.OUT, rises ? in : out);
            }
            case SLOWED_DOWN -> {
                rebase();
                resumeMin = nowMin + TAIL_MIN;
            }
        }
    }

    private void begin(Motion to, @Nullable Candidate c) {
        if (c != null) {
            motion = to;
            found.begin(c);
        }
    }

    private void begin(Motion to, Beyond beyond) {
        motion = to;
        if (beyond.measured()) {
            found.beginLarge(beyond.sinceMin(), beyond.rateLMin());
        } else {
            found.begin(beyond.sinceMin(), beyond.rateLMin());
        }
    }

    private void begin(Motion to, double fromMin, double rate) {
        motion = to;
        found.begin(fromMin, rate);
    }

    /** A flow stands: until it ends, or the mean level says that it never was. */
    private void follow(double nowMin) {
        if (found.over()) {
            rebase();
            return;
        }
        double slope = Double.isNaN(pumpOffMin) ? fill.fillLMin() : 0;
        Usual usual = new Usual(slope, StrictMath.max(FlowEvidence.STEADY_SD_L_MIN, fill.spreadLMin()), guard.noiseL());
        found.weigh(usual, evidence.standingSdLMin(), nowMin);
        boolean brim = ranOver(nowMin);
        if (bedsL > 0 && !brim && found.contradicted(nowMin, 0.5 * bedsL + 40, slow)) {
            fill.relearn();
            drains.wrong();
            motion = Motion.STEADY;
            rebase();
        }
    }

    /** Error of the learned slope itself, L/min. */
    double standingSdLMin() {
        return evidence.standingSdLMin();
    }

    Motion motion() {
        return motion;
    }

    /** Signed, L/min. */
    double rateLMin() {
        return found.rateLMin();
    }

    double rateSeLMin() {
        return found.rateSeLMin();
    }

    /** How fast it rose or fell between two times beyond its usual slope, L/min. */
    Slope slope(double fromMin, double toMin) {
        double usual = Double.isNaN(pumpOffMin) ? fill.fillLMin() : 0;
        return history.slope(fromMin, toMin, new Usual(usual, FlowEvidence.STEADY_SD_L_MIN, guard.noiseL()));
    }

    /** Whether it stood at its overflow lately. */
    boolean ranOver(double nowMin) {
        return nowMin - brimMin < BRIM_FORGOTTEN_MIN;
    }

    /** The volume from which it rises to its brim: at the top of its swing where siphons move it. */
    double highL(double nowMin) {
        double high = swing.highL(nowMin, found.onsetMin(), found.rateLMin());
        return Double.isNaN(high) ? volumeL : StrictMath.max(high, volumeL);
    }

    /** The volume from which it falls dry likewise. */
    double lowL(double nowMin) {
        double low = swing.lowL(nowMin, found.onsetMin(), found.rateLMin());
        return Double.isNaN(low) ? volumeL : StrictMath.min(low, volumeL);
    }

    /** What moves since about {@code tMin}, whether convincing or not; null where that is not known. */
    @Nullable
    Candidate since(double tMin) {
        return glr.near(tMin);
    }

    /** Signed, by now. */
    double movedL(double nowMin) {
        return found.litres(nowMin);
    }

    double movedSeL(double nowMin) {
        return StrictMath.hypot(found.litresSe(nowMin), guard.noiseL());
    }

    /** When the flow ended, told once at its end; NaN while it runs. */
    double endMin() {
        return found.endMin();
    }

    /** The last flow that is over; null where there was none. */
    @Nullable
    Past past() {
        return pasts.peekLast();
    }

    /** Those kept, oldest first. */
    Iterable<Past> pasts() {
        return pasts;
    }

    /** The mean of the last few volumes, L; NaN without any. */
    double recentL() {
        return recent.meanL();
    }

    /** A flow whose beginning is known is followed from here on; signed. */
    void follow(double fromMin, double rateLMin) {
        motion = rateLMin > 0 ? Motion.IN : Motion.OUT;
        found.beginKnown(fromMin, rateLMin);
    }

    double onsetMin() {
        return found.onsetMin();
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

    HourlyChange hour() {
        return hour;
    }

    /** The least flow that would be found within so many minutes from now, L/min; NaN where none would be told. */
    double findsLMin(double minutes) {
        boolean resolved = bedsL == 0 || resolvesDrains();
        return new Reach(
                        bedsL,
                        everyMin,
                        evidence.standingSdLMin(),
                        evidence.neededLogRatio(),
                        learned(lastMin),
                        resolved)
                .findsLMin(minutes, drains.slopesMin3(minutes), guard, fill, slow);
    }
}
