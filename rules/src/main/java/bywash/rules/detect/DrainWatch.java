package bywash.rules.detect;

import bywash.rules.detect.RecentVolumes.Point;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;

/** Stretches in which some bed drains, and whether drains can explain them. */
final class DrainWatch {
    private static final double WINDOW_MIN = 1;
    private static final double STILL_SHARE = 0.5;
    private static final double SHARE_GAIN = 0.002;
    private static final double PHASE_GAIN = 0.01;
    private static final double LONGEST_FILL_MIN = 60;
    private static final int ENDLESS_AFTER = 15;
    private static final double ENDLESS_LEAST_L = 20;
    private static final double ENDLESS_CAUTION = 12;
    private static final double LIFTED_SHARE = 0.4;
    private static final int RATES_MIN = 3;
    private static final double LEAST_LIFT_L_MIN = 5;

    private final double bedsL;
    private final SlowRise slowRise;
    private final Brim brim;
    private final ArrayDeque<Rate> rates = new ArrayDeque<>();
    private double startMin = Double.NaN;
    private double startL;
    private double endMin = -1e9;
    private double longestMin;
    private int episodes;
    private double fillShare = 1;
    private double lengthMin;
    private double cubeMin3;
    private int phases;
    private double rateLMin = Double.NaN;

    /** What the sump is known to do: its fill slope, its noise, its mean of the hours before, and whether to learn from it. */
    record Known(double fillLMin, double noiseL, double meanL, boolean hold) {}

    private record Rate(double tMin, double lMin) {}

    DrainWatch(Hold hold, boolean pumpTold) {
        this.slowRise = new SlowRise(pumpTold);
        this.bedsL = hold.bedsL();
        this.brim = new Brim(pumpTold ? 0 : hold.pipesL());
    }

    boolean running() {
        return !Double.isNaN(startMin);
    }

    double startMin() {
        return startMin;
    }

    /** When last a drain was seen. */
    double endMin() {
        return endMin;
    }

    void begins(Point at) {
        double length = StrictMath.min(LONGEST_FILL_MIN, at.tMin() - endMin);
        if (length > 0) {
            double gain = StrictMath.max(PHASE_GAIN, 1.0 / ++phases);
            lengthMin += gain * (length - lengthMin);
            cubeMin3 += gain * (length * length * length - cubeMin3);
        }
        startMin = at.tMin();
        startL = at.volumeL();
    }

    /** A drain is seen. */
    void goesOn(double tMin) {
        endMin = tMin;
    }

    /** The drains ended then; {@code hold} keeps what was learned. */
    void over(double tMin, boolean hold) {
        endMin = StrictMath.max(startMin, tMin);
        if (running() && !hold) {
            episodes++;
            longestMin = StrictMath.max(longestMin, endMin - startMin);
        }
        startMin = Double.NaN;
    }

    /** What runs now is not over and not known. */
    void forget() {
        startMin = Double.NaN;
        slowRise.forget();
        brim.forget();
        rates.clear();
    }

    /** What was found was none: such a level is known. */
    void wrong() {
        brim.learnCried();
    }

    /**
     * What slopes between drains tell in so many minutes, min^3: the sum of their cubed lengths, for each such slope has
     * a level of its own.
     */
    double slopesMin3(double minutes) {
        return phases == 0 ? minutes * minutes * minutes : minutes * fillShare * cubeMin3 / lengthMin;
    }

    /** Takes each volume while the pump runs. */
    void sample(Point p, RecentVolumes recent, Known known) {
        fillShare += ((running() ? 0 : 1) - fillShare) * SHARE_GAIN;
        double noiseL = known.noiseL();
        brim.level(p.tMin(), recent.sureL(), known.meanL(), noiseL, known.hold());
        Point earlier = recent.earlier(WINDOW_MIN);
        if (earlier != null) {
            double minutes = p.tMin() - earlier.tMin();
            rateLMin = (p.volumeL() - earlier.volumeL()) / minutes - known.fillLMin();
            boolean still = lately(p, recent, known) > STILL_SHARE * rateLMin;
            slowRise.rate(p.tMin(), rateLMin, still, 1.2 * noiseL / minutes, episodes, known.hold());
            rates.addLast(new Rate(p.tMin(), rateLMin));
            while (p.tMin() - rates.getFirst().tMin() > RATES_MIN) {
                rates.removeFirst();
            }
        }
    }

    /** How fast it rose in the last half minute, which noise blurs: enough to tell whether a drain has just ended. */
    private static double lately(Point p, RecentVolumes recent, Known known) {
        Point earlier = recent.earlier(WINDOW_MIN / 2);
        return earlier == null ? 0 : (p.volumeL() - earlier.volumeL()) / (p.tMin() - earlier.tMin()) - known.fillLMin();
    }

    /** Water that no drain explains: since when, L/min, and whether that rate is measured or only guessed. */
    record Beyond(double sinceMin, double rateLMin, boolean measured) {}

    /** What no drain explains; null where drains may explain all. {@code backed} by slopes or the book of the beds. */
    @Nullable
    Beyond beyond(double nowMin, double sureL, Known known, boolean backed) {
        double since = slowRise.foundSinceMin((backed ? 1 : 0) + (brim.share() > LIFTED_SHARE ? 1 : 0));
        if (!Double.isNaN(since)) {
            return new Beyond(since, rateLMin, true);
        }
        if (brim.share() > 1) {
            return overfull(nowMin);
        }
        if (!running()) {
            return null;
        }
        double span = nowMin - startMin;
        double rise = sureL - startL;
        // many beds may drain one into the other for as long, but then the level is no higher than ever
        boolean endless = rates.size() > 1
                && episodes >= ENDLESS_AFTER
                && span > surelyOverMin()
                && rise > ENDLESS_LEAST_L
                && !(brim.share() < LIFTED_SHARE);
        return endless || rise > bedsL + 6 * known.noiseL()
                ? new Beyond(startMin, rise / span - known.fillLMin(), true)
                : null;
    }

    /** Minutes that no drain lasts for. */
    double surelyOverMin() {
        return longestMin * (1.5 + ENDLESS_CAUTION / StrictMath.max(1, episodes)) + 2;
    }

    /** Between drains a rise shows bare: the least rate of the last minutes, which must have brought what is too much. */
    private Beyond overfull(double nowMin) {
        double least = rates.stream().mapToDouble(Rate::lMin).min().orElse(0);
        double rate = StrictMath.max(LEAST_LIFT_L_MIN, least);
        return new Beyond(nowMin - brim.heightL() / rate, rate, least > LEAST_LIFT_L_MIN);
    }
}
