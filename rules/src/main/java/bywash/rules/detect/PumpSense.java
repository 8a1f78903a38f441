package bywash.rules.detect;

import bywash.rules.detect.PumpGuess.Outcome;
import bywash.rules.detect.RampGlr.Candidate;
import bywash.rules.detect.RecentVolumes.Point;

/** The pump as one vessel feels it: told by a probe or guessed from the level, and what drains back while it stands. */
final class PumpSense {
    private final boolean told;
    private final boolean mayDrainBack;
    private final boolean siphons;
    private final PumpStop stop;
    private final Standstill standstill = new Standstill();
    private final PumpGuess guess;

    PumpSense(Pump pump, Hold hold) {
        this.told = pump == Pump.TOLD;
        this.mayDrainBack = pump != Pump.NONE;
        this.siphons = hold.bedsL() > 0;
        this.guess = new PumpGuess(hold.pipesL());
        this.stop = new PumpStop(hold.bedsL() + hold.pipesL());
    }

    /** What stops and starts do, and when. */
    PumpStop stop() {
        return stop;
    }

    boolean stands() {
        return stop.stands();
    }

    /** Looks at a volume for the pump's own sake. */
    void level(Point p, LevelViews views) {
        if (!told && siphons) {
            standstill.add(p.tMin(), p.volumeL(), views.fill().fillLMin(), views.noiseL(), !stands());
        }
    }

    /** Whether the level alone says that the pump has stopped, or runs again, where nobody tells. */
    boolean seemsTurned(LevelViews views) {
        if (told || !siphons || !views.fill().learned()) {
            return false;
        }
        return stands() ? standstill.runs(views.fill().fillLMin(), views.noiseL()) : standstill.stands();
    }

    /** Nobody saw what the level did. */
    void gap() {
        standstill.clear();
    }

    /** Another balance begins: what was suspected is forgotten. */
    void beginAnew() {
        guess.clear();
        standstill.clear();
    }

    /** Whether it may have stopped, so that a level that moves little says nothing. */
    boolean maybeStopped() {
        return standstill.maybe();
    }

    /** Where nobody tells that the pump runs again, so many minutes of rise or fall may be a siphon's or the pump's; else 0. */
    double maybeDrainMin(LevelViews views) {
        return !told && siphons && stands() ? views.surelyDrainedMin() : 0;
    }

    /** More has come in since the pump stopped than can drain back. */
    boolean beyondHold(LevelViews views) {
        return stop.beyondHold(views.recent().sureL(), views.noiseL());
    }

    /** The steady rise of a vessel whose pump has stood for a while, L/min; NaN where there is none. */
    double risesOnLMin(double nowMin, LevelViews views) {
        return stop.risesOnLMin(nowMin, (from, to) -> views.slope(from, to, !stands()), maybeDrainMin(views));
    }

    /** Whether a flow may be the pump, so that it is watched first: does it slow down? */
    boolean maybePump(Candidate c, LevelViews views) {
        if (told || !mayDrainBack || siphons) {
            return false;
        }
        Slope lately = views.latelyLMin();
        double surely = lately.rateLMin() * StrictMath.signum(c.rateLMin()) - PumpGuess.SURE_SIGMAS * lately.seLMin();
        return PumpGuess.sudden(c.rateLMin()) || surely > 0 && PumpGuess.sudden(surely);
    }

    boolean watching() {
        return guess.watching();
    }

    /** Watches a sudden flow from now on: at the least rate that explains it, and no more than the last samples allow. */
    void watch(double nowMin, Candidate c, LevelViews views) {
        double least = views.leastRateLMin(c);
        double sign = StrictMath.signum(least);
        Slope lately = views.latelyLMin();
        double most = lately.minutes() > 0
                ? StrictMath.max(0, sign * lately.rateLMin()) + PumpGuess.SURE_SIGMAS * lately.seLMin()
                : StrictMath.abs(least);
        double rate = sign * StrictMath.min(StrictMath.abs(least), most);
        guess.watch(nowMin, rate, views.mark(views.lastMin()), views.recentL());
    }

    /** A slope of its own is measured once the sudden flow is long enough ago. */
    void watchOn(double nowMin, LevelViews views) {
        if (guess.wantsFresh(nowMin)) {
            guess.fresh(views.mark(views.lastMin()));
        }
    }

    Outcome outcome(double nowMin, LevelViews views) {
        return guess.outcome(nowMin, views.recentL(), views.noiseL());
    }

    /** The sudden flow is none of the pump's. */
    void watched() {
        guess.clear();
    }
}
