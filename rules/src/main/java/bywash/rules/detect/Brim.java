package bywash.rules.detect;

import java.util.ArrayDeque;

/**
 * Learns how high the level gets above its own mean of the hours before while beds fill and drain, and finds a sump that
 * is fuller than that: whatever the beds do together, they can give no more than they hold.
 */
final class Brim {
    /** Of what was highest so far, while few hours were seen. */
    private static final double CAUTION_HOURS = 2;

    private static final double LEARNED_HOURS = 4;
    private static final double MORE_SHARE = 0.2;
    private static final double MORE_SIGMAS = 4;
    /** What was long ago counts less: halved in thirty days. */
    private static final double FADE_PER_MIN = StrictMath.log(2) / (30 * 1440);

    private static final double LONGEST_STEP_MIN = 5;

    private static final double HOUR_MIN = 60;
    /** What is high now is learned only so much later, when it is known that no water came in. */
    private static final double LAG_MIN = 40;

    private static final double BUCKET_MIN = 5;

    private record Peak(double fromMin, double heightL) {}

    private final ArrayDeque<Peak> lagging = new ArrayDeque<>();
    private final double unseenL;
    private double highestL;
    private double criedL;
    private double hours;
    private double heightL = Double.NaN;
    private double limitL = Double.POSITIVE_INFINITY;
    private double lastMin = Double.NaN;

    /** @param unseenL what may come back from pipes without anybody telling, L */
    Brim(double unseenL) {
        this.unseenL = unseenL;
    }

    /**
     * The level now and its mean of the hours before; {@code hold} keeps what was learned.
     *
     * @param usualL NaN while it is not known
     */
    void level(double tMin, double volumeL, double usualL, double noiseL, boolean hold) {
        double step = Double.isNaN(lastMin) ? 0 : StrictMath.min(LONGEST_STEP_MIN, tMin - lastMin);
        lastMin = tMin;
        highestL *= 1 - FADE_PER_MIN * step;
        heightL = volumeL - usualL;
        double caution = 1 + MORE_SHARE + CAUTION_HOURS / StrictMath.max(1, hours);
        limitL = hours < LEARNED_HOURS ? Double.POSITIVE_INFINITY : caution * highestL + MORE_SIGMAS * noiseL + unseenL;
        if (heightL > limitL) {
            criedL = StrictMath.max(criedL, heightL);
        }
        if (hold) {
            lagging.clear();
        } else if (!Double.isNaN(heightL)) {
            hours += step / HOUR_MIN;
            learn(tMin);
        }
    }

    /** What was taken for too full was none: so high the level does go. */
    void learnCried() {
        highestL = StrictMath.max(highestL, criedL);
        criedL = 0;
    }

    private void learn(double tMin) {
        Peak last = lagging.peekLast();
        if (last == null || tMin - last.fromMin() > BUCKET_MIN) {
            lagging.addLast(new Peak(tMin, heightL));
        } else if (heightL > last.heightL()) {
            lagging.removeLast();
            lagging.addLast(new Peak(last.fromMin(), heightL));
        }
        while (tMin - lagging.getFirst().fromMin() > LAG_MIN) {
            highestL = StrictMath.max(highestL, lagging.removeFirst().heightL());
        }
    }

    /** What stands now is not known. */
    void forget() {
        heightL = Double.NaN;
        lagging.clear();
    }

    /** How full the sump is against the most that is usual: above 1 water has come in. NaN where it is not known. */
    double share() {
        return heightL / limitL;
    }

    /** Above the mean of the hours before, L. */
    double heightL() {
        return heightL;
    }
}
