package bywash.rules.detect;

/** The level at which a vessel runs over: what comes in there shows in no level, nor in its mean for a while. Minutes, L. */
final class Overflow {
    private static final double SIGMAS = 3;
    /** So long after it stood at its overflow a vessel's mean level tells nothing of what came in. */
    private static final double FORGOTTEN_MIN = 120;

    private final double brimL;
    private double lastMin = -1e9;

    /** @param brimL it overflows at so many litres; infinite where it never does */
    Overflow(double brimL) {
        this.brimL = brimL;
    }

    /** Whether a volume is at the overflow, within its noise. */
    boolean at(double volumeL, double noiseL) {
        return volumeL > brimL - SIGMAS * noiseL;
    }

    /** It was seen to stand there. */
    void stoodThere(double tMin) {
        lastMin = tMin;
    }

    /** Whether it stood there lately. */
    boolean lately(double nowMin) {
        return nowMin - lastMin < FORGOTTEN_MIN;
    }
}
