package bywash.rules.detect;

import bywash.rules.detect.Stretch.Bounds;
import bywash.rules.detect.Stretch.Usual;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How much water a found flow has brought: its rate, when it began and when it ended, weighed together.
 *
 * <p>The slope of the volume steps up at the onset and down at the end. Each pair of onset and end, and each rate, is weighed
 * by how well it fits the stretches between drains (a Bayesian change-point of the slope with flat prior on the end), so that
 * litres have a range that knows of all three, and the end is found as soon as the slopes tell it. Minutes, L/min, litres.
 *
 * <p>Source: A. F. M. Smith, 1975, A Bayesian approach to inference about a change-point in a sequence of random variables,
 * Biometrika 62(2), 407-416; here with two change-points of a slope.
 */
final class FlowSpan {
    private static final double BEFORE_MIN = 90;
    /** Valves and pressure are not quite steady: so much of the rate may differ from stretch to stretch. */
    private static final double UNSTEADY = 0.08;

    private static final int MOST_LOOKS = 5;
    private static final double MOST_AT_EDGE = 0.01;
    private static final double TOO_WIDE = 2.5;

    /**
     * What is thought before the slopes are heard.
     *
     * @param earlyMin how much earlier it may have begun, all of it alike; 0 where the onset is given
     * @param lateSdMin how much later, one standard deviation
     * @param rateLMin signed
     * @param rateLogSd standard deviation of the rate's logarithm
     */
    record Prior(double onsetMin, double earlyMin, double lateSdMin, double rateLMin, double rateLogSd) {}

    /**
     * What is known now; errors are one standard error.
     *
     * @param endMin when it ended, where it has
     * @param ended how probable it is that it has
     */
    record Estimate(
            double rateLMin,
            double rateSeLMin,
            double litres,
            double litresSe,
            double onsetMin,
            double endMin,
            double ended) {}

    /** Where the rate is looked for: about a centre, so wide. Signed, L/min. */
    record Search(double rateLMin, double sdLMin) {
        static Search of(Prior prior) {
            return new Search(prior.rateLMin(), StrictMath.abs(prior.rateLMin()) * prior.rateLogSd());
        }
    }

    /** How far the slopes just before a flow lay from the usual one, L/min, and the variance of that. */
    record Offset(double lMin, double variance) {}

    /** What the slopes make of a flow, where to look for its rate the next time, and what was before it. */
    record Weighed(Estimate estimate, Search next, Offset before) {}

    private final FlowHistory history;
    private final boolean siphons;

    FlowSpan(FlowHistory history, boolean siphons) {
        this.history = history;
        this.siphons = siphons;
    }

    /** @param standingSd error of the usual slope itself, L/min; @param search where the rate is thought to lie by now */
    Weighed weigh(Prior prior, Usual usual, double standingSd, double nowMin, Search search) {
        double earliest = prior.onsetMin() - prior.earlyMin();
        List<Bounds> bounds = history.stretches(earliest - BEFORE_MIN, nowMin);
        Offset before = before(bounds, earliest, usual, standingSd);
        List<Bounds> since = bounds.stream().filter(b -> b.endMin() > earliest).toList();
        return weigh(since, prior, usual, before, nowMin, search);
    }

    /** Of a flow that took up another rate at the prior's onset: what went before is another matter. */
    Weighed weighOn(Prior prior, Usual usual, Offset before, double nowMin, Search search) {
        return weigh(history.stretches(prior.onsetMin(), nowMin), prior, usual, before, nowMin, search);
    }

    private Weighed weigh(List<Bounds> since, Prior prior, Usual usual, Offset before, double nowMin, Search search) {
        Usual during = unsteady(
                new Usual(usual.slopeLMin() + before.lMin(), usual.spreadLMin(), usual.noiseL()), search.rateLMin());
        SpanMoments found = looked(new SpanGrid(history, since, siphons, prior, during, nowMin), search);
        Search next = new Search(found.rate(), width(found, found.rate()));
        return new Weighed(found.estimate(before.variance()), next, before);
    }

    /** Looks where the rate is thought to lie, then where it is found to, until all of it is seen and closely enough. */
    private static SpanMoments looked(SpanGrid grid, Search search) {
        double centre = search.rateLMin();
        double sd = search.sdLMin();
        SpanMoments found = grid.over(centre, sd);
        for (int looks = 1; looks < MOST_LOOKS; looks++) {
            double width = width(found, centre);
            boolean whole = found.edge() < MOST_AT_EDGE;
            if (whole && sd < TOO_WIDE * width) {
                break;
            }
            centre = found.rate();
            sd = whole ? width : 2 * sd;
            found = grid.over(centre, sd);
        }
        return found;
    }

    private static double width(SpanMoments found, double rateLMin) {
        return StrictMath.max(found.rateSd(), SpanGrid.FINEST_SHARE * StrictMath.abs(rateLMin));
    }

    private static Usual unsteady(Usual usual, double rateLMin) {
        double spread = StrictMath.hypot(usual.spreadLMin(), UNSTEADY * StrictMath.abs(rateLMin));
        return new Usual(usual.slopeLMin(), spread, usual.noiseL());
    }

    /** When the valve of a flow of that rate was likeliest turned, if it was; null where that cannot be told. */
    @Nullable
    Turn turn(double rateLMin, double onsetMin, double settledMin, double nowMin, Usual usual) {
        return Turn.likeliest(history, onsetMin, onsetMin + settledMin, nowMin, unsteady(usual, rateLMin));
    }

    /** The slope from a time on. */
    Slope since(double fromMin, double nowMin, Usual usual) {
        return history.slope(fromMin, nowMin, usual);
    }

    private Offset before(List<Bounds> bounds, double beforeMin, Usual usual, double standingSd) {
        double weight = 1 / (standingSd * standingSd);
        double sum = 0;
        for (Bounds b : bounds) {
            if (b.endMin() < beforeMin) {
                Stretch s = Stretch.level(history, b, usual);
                double most = 2.5 * StrictMath.sqrt(s.slopeVar());
                double w = 1 / s.slopeVar();
                sum += w * StrictMath.max(-most, StrictMath.min(most, s.slope()));
                weight += w;
            }
        }
        return new Offset(sum / weight, 1 / weight);
    }
}
