package bywash.rules.chlorine;

/**
 * How a potential probe may answer chlorine: S ln(1 + C / 20 ug/L), with S from 20 to 150 mV, since no published response of fish
 * water is known; or not at all, being fouled. Which it is does not change within an incident.
 */
enum ProbeAnswer {
    FOULED(0, 0.15),
    WEAK(20, 0.17),
    FAIR(45, 0.255),
    GOOD(90, 0.255),
    STRONG(150, 0.17);

    private static final double HALF_UG_L = 20;

    private final double slopeMv;
    private final double share;

    ProbeAnswer(double slopeMv, double share) {
        this.slopeMv = slopeMv;
        this.share = share;
    }

    /** Share of probes that answer so; assumed. */
    double share() {
        return share;
    }

    /** The rise that a residual gives, mV. */
    double riseMv(double ugL) {
        return riseOfFoldMv(fold(ugL));
    }

    /** What all answers have in common: the logarithm that a residual is answered in. */
    static double fold(double ugL) {
        return StrictMath.log1p(ugL / HALF_UG_L);
    }

    /** The rise that such a logarithm gives, mV. */
    double riseOfFoldMv(double fold) {
        return slopeMv * fold;
    }
}
