package bywash.rules.detect;

import bywash.rules.detect.DrainWatch.Beyond;
import bywash.rules.detect.PastFlows.Past;
import bywash.rules.detect.RampGlr.Candidate;
import bywash.rules.detect.RecentVolumes.Point;
import bywash.rules.detect.Stretch.Usual;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Decides, for one vessel's volume in litres over minutes, whether water flows in or out that the known cycles do not
 * explain. A log likelihood ratio of 16 is about one false alarm in e^16 independent looks; the spread of fill slopes
 * beyond noise counts against it as a standing error of the rate.
 */
final class VesselFlow {
    /** With samples farther apart drains and fills blur; then slow means alone are heard. */
    private static final double RESOLVES_DRAINS_MIN = 0.5;

    private static final double MOST_LOSS_L_MIN = 8;

    private final SpikeGuard guard;
    private final FillPhase fill;
    private final RampGlr glr = new RampGlr(1.0, 0.5);
    private final SlowDrift slow;
    private final BedBook book;
    private final HourlyChange hour;
    private final double bedsL;
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
    private final Standstill standstill = new Standstill();
    private final PumpGuess guess = new PumpGuess();
    private final DrainWatch drains;
    private double lastMin = Double.NaN;
    private double firstMin = Double.NaN;
    private double volumeL = Double.NaN;
    private final PumpStop stop;
    private final Overflow overflow = new Overflow();
    private final PastFlows pasts = new PastFlows();
    private boolean plannedRuns;

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
        this.stop = new PumpStop(hold.bedsL() + hold.pipesL());
        this.found = new FoundFlow(history, hold.bedsL() > 0);
    }

    /** The volume at which it overflows: what runs over there shows in no level. */
    VesselFlow brim(double litres) {
        overflow.at(litres);
        return this;
    }

    void level(double tMin, double litres) {
        if (Double.isNaN(firstMin)) {
            firstMin = tMin;
        }
        if (!Double.isNaN(lastMin) && tMin - lastMin > gapMin()) {
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

    /** So long without a volume that the level may have done anything, min. */
    private double gapMin() {
        return StrictMath.max(2, 3.5 * everyMin);
    }

    private void gap() {
        guard.gap();
        book.loosenBeds();
        drains.forget();
        recent.clear();
        standstill.clear();
        interrupt();
    }

    private void interrupt() {
        feed.interrupt(phaseNow());
        history.restart();
    }

    private PhaseFeed.Now phaseNow() {
        return new PhaseFeed.Now(guard.noiseL(), !stop.stands(), moving());
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
        stop.listen(p, recent);
        if (stop.suspends(p.tMin())) {
            if (p.tMin() > stop.drainedBackMin()) {
                history.add(p.tMin(), p.volumeL());
            }
            return;
        }
        slow.add(p.tMin(), p.volumeL(), moving());
        hour.add(p.tMin(), p.volumeL(), motion == Motion.STEADY && !plannedRuns);
        if (resolvesDrains() && fill.learned() && !stop.stands()) {
            drains.sample(p, recent, known());
        }
        double lookBack = fill.lookBackMin(guard.noiseL());
        Point earlier = recent.earlier(lookBack);
        if (earlier != null) {
            double minutes = p.tMin() - earlier.tMin();
            double rise = p.volumeL() - earlier.volumeL();
            fill.rough(rise / minutes);
            if (!stop.stands() && fill.draining(rise - knownInL(minutes), minutes, guard.noiseL())) {
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
        boolean on = !stop.stands();
        standstill.add(p.tMin(), p.volumeL(), fill.fillLMin(), guard.noiseL(), on);
        if (!fill.learned() || holding()) {
            return;
        }
        if (on && standstill.stands()) {
            pump(p.tMin(), false);
        } else if (!on && standstill.runs(fill.fillLMin(), guard.noiseL())) {
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
        if (overflow.reached(p.tMin(), p.volumeL(), guard.noiseL())) {
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

    /** Whether water moves, found or declared, so that nothing is learned from the level. */
    private boolean moving() {
        return holding() || plannedRuns;
    }

    /** The pump is known to run or to stand. */
    void pump(double tMin, boolean on) {
        if (on != stop.stands()) {
            return;
        }
        stop.turned(tMin, on, volumeL);
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
            pasts.add(new Past(
                    found.onsetMin(),
                    Double.isNaN(end) ? lastMin : end,
                    movedL(lastMin),
                    movedSeL(lastMin),
                    found.rateLMin()));
        }
        hour.disturbed();
        interrupt();
        glr.clear();
        book.loosenTotal();
        slow.clear();
        guess.clear();
        standstill.clear();
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
        if (stop.suspends(nowMin) && !holding() && !entersWithoutPump(nowMin)) {
            return;
        }
        switch (motion) {
            case LEARNING, STEADY, DRAINING_BACK -> {
                look(nowMin);
                if (holding()) {
                    weigh(nowMin);
                }
            }
            case IN, OUT -> follow(nowMin);
        }
    }

    /** While the pump stands: more than can drain back, or a rise that does not slow down as draining back does. */
    private boolean entersWithoutPump(double nowMin) {
        return beyondHold() || !Double.isNaN(risesOnLMin(nowMin));
    }

    private boolean beyondHold() {
        return stop.beyondHold(recent.sureL(), guard.noiseL()) && motion != Motion.IN;
    }

    /** The steady rise of a vessel whose pump has stood for a while, L/min; NaN where there is none. */
    private double risesOnLMin(double nowMin) {
        return motion == Motion.IN || plannedRuns ? Double.NaN : stop.risesOnLMin(nowMin, this::slope, maybeDrainMin());
    }

    /** Where nobody tells that the pump runs again, so many minutes of rise or fall may be a siphon's or the pump's; else 0. */
    private double maybeDrainMin() {
        return !pumpTold && bedsL > 0 && stop.stands() ? drains.surelyOverMin() : 0;
    }

    private void look(double nowMin) {
        double risesOn = risesOnLMin(nowMin);
        if (beyondHold() || !Double.isNaN(risesOn)) {
            double rate = Double.isNaN(risesOn) ? stop.wholeLMin(nowMin, volumeL) : risesOn;
            motion = Motion.IN;
            found.beginWithin(stop.offMin(), stop.drainedBackMin(), rate);
            return;
        }
        double heardMin = StrictMath.min(nowMin, lastMin + gapMin()); // a drain does not go on while nobody listens
        Beyond beyond = drains.beyond(heardMin, recent.sureL(), known(), evidence.hintsAtInflow());
        if (beyond != null && !standstill.maybe()) {
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
        } else if (in != null && comes && nowMin - in.onsetMin() >= maybeDrainMin()) {
            begin(Motion.IN, in);
        } else if (out != null && goes && !comes && nowMin - out.onsetMin() >= maybeDrainMin()) {
            begin(Motion.OUT, out);
        } else if (!standstill.maybe()) {
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
        return new DrainWatch.Known(fill.fillLMin(), guard.noiseL(), slow.usualL(), moving());
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
                stop.slowedDown(nowMin, rises);
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
        weigh(nowMin);
        boolean brim = ranOver(nowMin);
        if (bedsL > 0 && !brim && found.contradicted(nowMin, 0.5 * bedsL + 40, slow)) {
            fill.relearn();
            drains.wrong();
            motion = Motion.STEADY;
            rebase();
        }
    }

    private void weigh(double nowMin) {
        double spread = StrictMath.max(FlowEvidence.STEADY_SD_L_MIN, fill.spreadLMin());
        found.weigh(new Usual(usualLMin(), spread, guard.noiseL()), evidence.standingSdLMin(), nowMin);
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

    private double usualLMin() {
        return stop.stands() ? 0 : fill.fillLMin();
    }

    /** How fast it rose or fell between two times beyond its usual slope, L/min. */
    Slope slope(double fromMin, double toMin) {
        return history.slope(fromMin, toMin, new Usual(usualLMin(), FlowEvidence.STEADY_SD_L_MIN, guard.noiseL()));
    }

    /** Whether it stood at its overflow lately. */
    boolean ranOver(double nowMin) {
        return overflow.lately(nowMin);
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
        return pasts.last();
    }

    /** Those kept, oldest first. */
    PastFlows pasts() {
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
