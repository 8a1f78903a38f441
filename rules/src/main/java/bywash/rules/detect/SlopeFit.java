package bywash.rules.detect;

/**
 * Least-squares slope of a volume from one moment on, with an intercept of its own for each stretch between restarts
 * (siphon drains), pooled over the stretches. Unlike a {@link RampGlr} candidate it owes nothing to what was before.
 */
final class SlopeFit {
    private final double onsetMin;
    private double n;
    private double meanT;
    private double meanV;
    private double sxx;
    private double sxy;
    private double noiseVar = Double.POSITIVE_INFINITY;

    SlopeFit(double onsetMin) {
        this.onsetMin = onsetMin;
    }

    void add(double tMin, double volumeL, double noiseVarL2) {
        if (tMin < onsetMin) {
            return;
        }
        noiseVar = noiseVarL2;
        n++;
        double dt = tMin - meanT;
        meanT += dt / n;
        meanV += (volumeL - meanV) / n;
        sxx += dt * (tMin - meanT);
        sxy += dt * (volumeL - meanV);
    }

    /** The level may jump here; the slope may not. */
    void restart() {
        n = 0;
        meanT = 0;
        meanV = 0;
    }

    double onsetMin() {
        return onsetMin;
    }

    double rateLMin() {
        return sxx > 0 ? sxy / sxx : 0;
    }

    /** One standard error, L/min. */
    double seLMin() {
        return sxx > 0 ? StrictMath.sqrt(noiseVar / sxx) : Double.POSITIVE_INFINITY;
    }
}
