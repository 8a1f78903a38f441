package bywash.rules.detect;

/** The level at which a vessel runs over: what comes in there shows in no level, nor in its mean for a while. Minutes, L. */
final class Overflow {
    private static final double SIGMAS = 3;
    /** So long after it stood at its overflow a vessel's mean level tells nothing of what came in. */
    private static final double FORGOTTEN_MIN = 120;

    private double atL = Double.POSITIVE_INFINITY;
    private double lastMin = -1e9;

    /** It overflows at so many litres. */
    void at(double litres) {
        atL = litres;
    }

    /** Whether a volume stands at the overflow, which is remembered. */
    boolean reached(double tMin, double volumeL, double noiseL) {
        boolean reached = volumeL > atL - SIGMAS * noiseL;
        lastMin = reached ? tMin : lastMin;
        return reached;
    }

    /** Whether it stood there lately. */
    boolean lately(double nowMin) {
        return nowMin - lastMin < FORGOTTEN_MIN;
    }
}
