package bywash.rules.detect;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Generalised likelihood ratio for a ramp of unknown onset and rate, on the innovations of a scalar Kalman filter.
 *
 * <p>The volume follows a random walk of small variance and is measured with white noise. For each candidate onset the
 * signature of a unit ramp in the innovations is carried along (it includes how the filter itself adapts), and rate and
 * log likelihood ratio follow from two sums: rate = B/A, l = B^2/(2A). A restart (a siphon drain) forgets the level
 * but keeps the candidates, so that slopes on both sides of a drain add up.
 *
 * <p>Source: A. S. Willsky and H. L. Jones, 1976, A generalized likelihood ratio approach to the detection and
 * estimation of jumps in linear systems, IEEE Trans. Automatic Control 21(1), 108-112; M. Basseville and I. V.
 * Nikiforov, 1993, Detection of Abrupt Changes, chapter 7.
 */
final class RampGlr {
    private static final int MOST = 48;
    private static final double CLIP_SIGMAS = 2.5;
    private static final int BELIEVED = 4;
    private static final int MOST_FITS = 6;
    /**
     * Onsets whose log likelihood ratio is at least such a share of the best may as well be the true one: what was clipped at
     * first and then believed looks like a flow that began later and faster.
     */
    private static final double AS_LIKELY = 0.85;

    /** One candidate onset. Times in minutes, rates in L/min. */
    static final class Candidate {
        private final double onsetMin;
        private double response;
        private double a;
        private double b;

        Candidate(double onsetMin) {
            this.onsetMin = onsetMin;
        }

        double onsetMin() {
            return onsetMin;
        }

        double rateLMin() {
            return a > 0 ? b / a : 0;
        }

        double seLMin() {
            return a > 0 ? 1 / StrictMath.sqrt(a) : Double.POSITIVE_INFINITY;
        }

        double logRatio() {
            return logRatio(0);
        }

        /** With a standing error of the rate, L/min, that no number of samples averages away. */
        double logRatio(double standingSdLMin) {
            return RampScores.logRatio(a, b, standingSdLMin);
        }
    }

    private final double walkVarPerMin;
    private final double spacingMin;
    private final List<Candidate> candidates = new ArrayList<>();
    private double level = Double.NaN;
    private double variance;
    private double lastMin;
    private double nextOnsetMin = Double.NEGATIVE_INFINITY;
    private int clipped;
    private final ArrayDeque<SlopeFit> fits = new ArrayDeque<>();
    /** The likeliest ramps in and out, sought when one is asked for and kept until the sums change. */
    private @Nullable Candidate in;

    private @Nullable Candidate out;
    private double soughtWithSdLMin = Double.NaN;

    /**
     * @param walkSdPerHourL standard deviation of the level's own random walk over an hour, L
     * @param spacingMin minutes between candidate onsets
     */
    RampGlr(double walkSdPerHourL, double spacingMin) {
        this.walkVarPerMin = walkSdPerHourL * walkSdPerHourL / 60;
        this.spacingMin = spacingMin;
    }

    /** One volume with the learned slope already taken off. */
    void add(double tMin, double volumeL, double noiseVar) {
        changed();
        if (tMin >= nextOnsetMin) {
            candidates.add(new Candidate(tMin));
            if (candidates.size() > MOST) {
                thin();
            }
            nextOnsetMin = tMin + spacingMin;
        }
        for (SlopeFit fit : fits) {
            fit.add(tMin, volumeL, noiseVar);
        }
        if (Double.isNaN(level)) {
            start(tMin, volumeL, noiseVar);
            return;
        }
        variance += walkVarPerMin * (tMin - lastMin);
        lastMin = tMin;
        double spread = variance + noiseVar;
        double gain = variance / spread;
        double innovation = volumeL - level;
        innovation = believed(innovation, StrictMath.sqrt(spread));
        level += gain * innovation;
        variance *= 1 - gain;
        double weight = 1 / spread;
        for (Candidate c : candidates) {
            score(c, tMin, innovation, weight, gain);
        }
    }

    /** A few odd samples count for little; {@value #BELIEVED} in a row on one side are believed whole. */
    private double believed(double innovation, double sd) {
        double clip = CLIP_SIGMAS * sd;
        if (StrictMath.abs(innovation) <= clip) {
            clipped = 0;
            return innovation;
        }
        int side = innovation > 0 ? 1 : -1;
        clipped = clipped * side > 0 ? clipped + side : side;
        return StrictMath.abs(clipped) > BELIEVED ? innovation : side * clip;
    }

    private static void score(Candidate c, double tMin, double innovation, double weight, double gain) {
        double signature = tMin - c.onsetMin - c.response;
        double share = signature * weight;
        c.response += gain * signature;
        c.a += signature * share;
        c.b += innovation * share;
    }

    private void start(double tMin, double volumeL, double noiseVar) {
        level = volumeL;
        variance = noiseVar;
        lastMin = tMin;
        for (Candidate c : candidates) {
            c.response = tMin - c.onsetMin;
        }
    }

    /** Forgets the level, keeps the candidates. */
    void restart() {
        fits.forEach(SlopeFit::restart);
        level = Double.NaN;
    }

    /** Forgets everything. */
    void clear() {
        restart();
        changed();
        candidates.clear();
        nextOnsetMin = Double.NEGATIVE_INFINITY;
    }

    /** Starts a slope of its own at this moment; the {@value #MOST_FITS} youngest are kept up. */
    SlopeFit mark(double tMin) {
        SlopeFit fit = new SlopeFit(tMin);
        fits.addLast(fit);
        if (fits.size() > MOST_FITS) {
            fits.removeFirst();
        }
        return fit;
    }

    /** A slope that is not asked for any more. */
    void unmark(SlopeFit fit) {
        fits.remove(fit);
    }

    private void changed() {
        soughtWithSdLMin = Double.NaN;
    }

    /** The candidate with the greatest likelihood of a ramp in the given direction; null where there is none. */
    @Nullable
    Candidate best(boolean inwards, double standingSdLMin) {
        if (soughtWithSdLMin != standingSdLMin) {
            seek(standingSdLMin);
            soughtWithSdLMin = standingSdLMin;
        }
        return inwards ? in : out;
    }

    private void seek(double standingSdLMin) {
        in = null;
        out = null;
        double mostIn = Double.NEGATIVE_INFINITY;
        double mostOut = Double.NEGATIVE_INFINITY;
        for (Candidate c : candidates) {
            double ratio = c.logRatio(standingSdLMin);
            if (c.b > 0 && ratio > mostIn) {
                in = c;
                mostIn = ratio;
            } else if (c.b < 0 && ratio > mostOut) {
                out = c;
                mostOut = ratio;
            }
        }
    }

    /**
     * The least rate, signed, of those that explain what was seen nearly as well as a likeliest one: an earlier onset makes
     * the same rise of a slower flow.
     */
    double leastRateLMin(Candidate likeliest) {
        double least = likeliest.rateLMin();
        for (Candidate c : candidates) {
            double rate = c.rateLMin();
            boolean asLikely = rate * least > 0 && c.logRatio() > likeliest.logRatio() * AS_LIKELY;
            least = asLikely && StrictMath.abs(rate) < StrictMath.abs(least) ? rate : least;
        }
        return least;
    }

    /** The candidate whose onset is nearest to {@code tMin}; null where there is none. */
    @Nullable
    Candidate near(double tMin) {
        Candidate near = null;
        for (Candidate c : candidates) {
            double miss = StrictMath.abs(c.onsetMin - tMin);
            if (near == null || miss < StrictMath.abs(near.onsetMin - tMin)) {
                near = c;
            }
        }
        return near;
    }

    private void thin() {
        Iterator<Candidate> each = candidates.iterator();
        int index = 0;
        while (each.hasNext()) {
            each.next();
            if (index < MOST / 2 && index % 2 == 0) {
                each.remove();
            }
            index++;
        }
        while (!candidates.isEmpty() && candidates.get(0).onsetMin < lastMin - 240) {
            candidates.remove(0);
        }
    }
}
