package bywash.rules.detect;

import bywash.rules.detect.FlowSpan.Estimate;
import bywash.rules.detect.FlowSpan.Offset;
import bywash.rules.detect.FlowSpan.Prior;
import bywash.rules.detect.FlowSpan.Search;
import bywash.rules.detect.FlowSpan.Weighed;
import bywash.rules.detect.PastFlows.Past;
import bywash.rules.detect.Stretch.Usual;
import org.jspecify.annotations.Nullable;

/** A flow that was found: since when, how fast, how much, and whether it still runs. Minutes, L/min and litres. */
final class FoundFlow {
    private static final double LEFT_OF_CLAIM = 0.3;
    /** Sooner the mean of {@value SlowDrift#MEAN_OVER} min shows too little of a true flow. */
    private static final double MEAN_SHOWS_MIN = 25;

    private static final double HOURS_SHOW_MIN = 75;
    private static final double HALF_HOUR_MIN = 30;
    private static final double LEAST_SHOWN_L = 10;
    private static final double SHOWN_SIGMAS = 5;

    /** At whole half minutes, so that a tick that is missing puts nothing off for good. */
    private static final double LOOKS_PER_MIN = 2;

    /** So probable an end is taken for one. */
    private static final double SURELY_ENDED = 0.99;

    private static final double ENDED_AGO_MIN = 1.25;
    /** Of a flow that runs for longer, what came so far is carried on as a sum. */
    private static final double CARRY_AFTER_MIN = 180;

    private static final double CARRY_UNTIL_MIN = 30;
    private static final double LEAST_SINCE_END_MIN = 0.5 - 1e-6;
    private static final double SETTLED_MIN = 5;
    private static final double CHANGE_SIGMAS = 4;
    private static final double CHANGE_SHARE = 0.25;
    /** A valve that was turned down first, and shut later, is shut: older slopes than these need not speak for it. */
    private static final double LATELY_MIN = 12;

    private static final double MAYBE_TURNED = 0.02;
    /** A dip of noise in the first minutes looks like an end, for one look; between siphons' drains a look shows less new. */
    private static final int LOOKS = 2;

    private static final Prior NONE = new Prior(0, 0, 0, 0, 1);

    private final FlowSpan span;
    private final int looksAsked;
    private Prior prior = NONE;
    private Search search = new Search(0, 0);
    private @Nullable Estimate known;
    /** What may be left of it since the end of {@code known}. */
    private Left left = Left.NONE;

    private long looked;
    private double weighedMin;
    private double onsetMin;
    private double carriedL;
    private double carriedSe;
    private @Nullable Offset beforeIt;
    /** What was before it, once something of it is booked: from there on what went before is the flow itself. */
    private @Nullable Offset carriedOn;

    /** How many looks, up to the last, found that it is over. */
    private int looksOver;

    private boolean endTold;

    FoundFlow(FlowHistory history, boolean siphons) {
        this.span = new FlowSpan(history, siphons);
        this.looksAsked = siphons ? 1 : LOOKS;
    }

    /** Follows what a sign gave away. */
    void begin(FlowSign sign) {
        clear();
        prior = sign.prior();
        onsetMin = sign.fromMin();
        search = sign.search();
    }

    void clear() {
        prior = NONE;
        known = null;
        carriedL = 0;
        carriedSe = 0;
        carriedOn = null;
        looksOver = 0;
        left = Left.NONE;
        endTold = false;
    }

    /** Weighs anew, each half minute, how much has come and whether it still comes. */
    void weigh(Usual usual, double standingSd, double nowMin) {
        long look = (long) StrictMath.floor(nowMin * LOOKS_PER_MIN + 1e-6);
        if (known != null && look == looked) {
            return;
        }
        looked = look;
        weighedMin = nowMin;
        Estimate e = estimate(usual, standingSd, nowMin);
        onsetMin = known == null ? e.onsetMin() : onsetMin;
        known = e;
        left = left(e, usual, nowMin);
        looksOver = stopped(e, usual, nowMin) ? looksOver + 1 : 0;
        Turn turn = span.turn(e.rateLMin(), e.onsetMin(), SETTLED_MIN, nowMin, usual);
        if (turn != null && surely(turn)) {
            known = estimate(usual, standingSd, turn.tMin());
            carry(known, turn.tMin(), turn.after().rateLMin(), turn.tMin());
            carriedSe = StrictMath.hypot(carriedSe, turn.byLMin() * turn.sdMin());
            known = estimate(usual, standingSd, nowMin);
            left = left(known, usual, nowMin);
            return;
        }
        if (nowMin - prior.onsetMin() > CARRY_AFTER_MIN && e.ended() < 1 - SURELY_ENDED) {
            carry(e, nowMin - CARRY_UNTIL_MIN, e.rateLMin(), nowMin);
            known = estimate(usual, standingSd, nowMin);
        }
    }

    private Estimate estimate(Usual usual, double standingSd, double nowMin) {
        Offset before = carriedOn;
        Weighed weighed = before == null
                ? span.weigh(prior, usual, standingSd, nowMin, search)
                : span.weighOn(prior, usual, before, nowMin, search);
        search = weighed.next();
        beforeIt = weighed.before();
        return weighed.estimate();
    }

    /** Books what came up to a time, and goes on from there at a rate. */
    private void carry(Estimate e, double untilMin, double rateLMin, double nowMin) {
        double minutes = untilMin - e.onsetMin();
        carriedL += e.rateLMin() * minutes;
        carriedSe = StrictMath.hypot(carriedSe, e.litresSe() * StrictMath.min(1, minutes / (nowMin - e.onsetMin())));
        prior = new Prior(untilMin, 0, 0, rateLMin, 0.3);
        search = Search.of(prior);
        carriedOn = beforeIt;
    }

    /** Somebody has turned the valve: it runs at another rate, but runs. */
    private boolean surely(Turn turn) {
        Slope now = turn.after();
        double rate = now.rateLMin() * StrictMath.signum(prior.rateLMin());
        boolean runs = rate > FlowEvidence.FLOOR_L_MIN && rate > 3 * now.seLMin();
        boolean other = StrictMath.abs(turn.sigmas()) > CHANGE_SIGMAS
                && StrictMath.abs(turn.byLMin())
                        > CHANGE_SHARE * StrictMath.abs(turn.before().rateLMin());
        return runs && other && turn.both();
    }

    /** An end is sure, and what the slopes since then show is rather none than a valve that was turned down. */
    private boolean stopped(Estimate e, Usual usual, double nowMin) {
        if (!(e.ended() > SURELY_ENDED && nowMin - e.endMin() > ENDED_AGO_MIN)) {
            return false;
        }
        double lately = StrictMath.max(e.endMin(), nowMin - LATELY_MIN);
        return none(e, span.since(lately, nowMin, usual))
                || lately > e.endMin() && none(e, span.since(e.endMin(), nowMin, usual));
    }

    /** Whether slopes show rather none than what is left of a flow whose valve was turned down. */
    private static boolean none(Estimate e, Slope now) {
        return now.minutes() >= LEAST_SINCE_END_MIN
                && Left.of(e.rateLMin(), now).odds() < MAYBE_TURNED;
    }

    /** What may have come since an end that is likely; nothing where too little was seen since then. */
    private Left left(Estimate e, Usual usual, double nowMin) {
        if (!(e.ended() > 0)) {
            return Left.NONE;
        }
        Slope since = span.since(e.endMin(), nowMin, usual);
        return since.minutes() >= LEAST_SINCE_END_MIN ? Left.of(e.rateLMin(), since) : Left.NONE;
    }

    /**
     * Water that flows must be somewhere: a flow of so many litres that leaves the mean level where it was is none. Means of
     * whole hours tell it of slower flows, for as long as they run.
     */
    boolean contradicted(double nowMin, double leastL, SlowDrift slow) {
        double claimedL = litres(nowMin);
        double minutes = nowMin - onsetMin;
        boolean soon = minutes >= MEAN_SHOWS_MIN
                && StrictMath.abs(claimedL) >= leastL
                && slow.changeL(minutes) / claimedL < LEFT_OF_CLAIM;
        double shownL = claimedL * (minutes - HALF_HOUR_MIN) / minutes;
        return soon
                || minutes >= HOURS_SHOW_MIN
                        && StrictMath.abs(shownL) >= LEAST_SHOWN_L + SHOWN_SIGMAS * slow.hourSdL()
                        && slow.changeOfHoursL(minutes) / shownL < LEFT_OF_CLAIM;
    }

    /** From here on its end is told, if the last looks found one. */
    void tellEnd() {
        endTold = looksOver >= looksAsked;
    }

    /** Whether its end has been told, so that its last figures have been heard. */
    boolean endTold() {
        return endTold;
    }

    /** When it ended, once that is told; else NaN. */
    double endMin() {
        return endTold && known != null ? known.endMin() : Double.NaN;
    }

    /** Signed. */
    double rateLMin() {
        return known == null ? search.rateLMin() : known.rateLMin();
    }

    /** One standard error. */
    double rateSeLMin() {
        return known == null ? search.sdLMin() : known.rateSeLMin();
    }

    /** What has come by now, signed: of an end that is likely but not sure, its share; with what may be left since then. */
    double litres(double nowMin) {
        Estimate e = known;
        if (e == null) {
            return search.rateLMin() * (nowMin - onsetMin);
        }
        double since = StrictMath.max(0, nowMin - weighedMin);
        double seen = carriedL + e.litres() + e.rateLMin() * since * (1 - e.ended());
        return seen + e.ended() * left.meanLMin() * sinceEndMin(e, nowMin);
    }

    /** One standard error. */
    double litresSe(double nowMin) {
        Estimate e = known;
        if (e == null) {
            return rateSeLMin() * (nowMin - onsetMin);
        }
        double leftSe = StrictMath.sqrt(e.ended()) * left.sdLMin() * sinceEndMin(e, nowMin);
        return StrictMath.hypot(StrictMath.hypot(carriedSe, e.litresSe()), leftSe);
    }

    /** 0 where no end is thought of. */
    private static double sinceEndMin(Estimate e, double nowMin) {
        return e.ended() > 0 ? StrictMath.max(0, nowMin - e.endMin()) : 0;
    }

    /** What it was, by so late at most; its error with that of one volume, L. */
    Past until(double nowMin, double noiseL) {
        double end = endMin();
        return new Past(
                onsetMin,
                Double.isNaN(end) ? nowMin : end,
                litres(nowMin),
                StrictMath.hypot(litresSe(nowMin), noiseL),
                rateLMin());
    }

    double onsetMin() {
        return onsetMin;
    }
}
