package bywash.rules.water;

/**
 * How free chlorine divides between hypochlorous acid (HOCl, the more toxic and the stronger oxidant) and hypochlorite.
 *
 * <p>pKa = 3000.00 / T - 10.0686 + 0.0253 T; share = 1 / (1 + 10^(pH - pKa)).
 *
 * <p>Source: J. C. Morris, 1966, The acid ionization constant of HOCl from 5 to 35 degrees, J. Phys. Chem. 70:3798-3805. Range:
 * 0-35 Cel, pH 4-11, no cyanuric acid, little dissolved salt. Accuracy: published constants differ by 0.05 in pKa, about 2
 * points of percentage near pH 7.5.
 */
public final class HypochlorousAcid {
    /** Share of HOCl's toxicity that hypochlorite and monochloramine have, low and high end. */
    private static final double WEAKER_LOW = 1.0 / 4;

    private static final double WEAKER_HIGH = 1.0 / 3;

    private HypochlorousAcid() {}

    /**
     * How toxic the free chlorine is against the same amount all as HOCl.
     *
     * @param low low end of the range (share, 0 to 1)
     * @param high high end of the range (share, 0 to 1)
     */
    public record ToxicShare(double low, double high) {}

    /**
     * Acid constant of hypochlorous acid.
     *
     * @param temperatureC water temperature (Cel, 0 to 35)
     * @return pKa
     */
    public static double pKa(double temperatureC) {
        Valid.within("temperatureC", temperatureC, 0, 35, "Cel");
        double t = Kelvin.fromCelsius(temperatureC);
        return 3000.00 / t - 10.0686 + 0.0253 * t;
    }

    /**
     * Share of free chlorine that is HOCl.
     *
     * @param ph pH of the water (4 to 11)
     * @param temperatureC water temperature (Cel, 0 to 35)
     * @return share (0 to 1)
     */
    public static double share(double ph, double temperatureC) {
        Valid.within("ph", ph, 4, 11, "");
        return 1 / (1 + StrictMath.pow(10, ph - pKa(temperatureC)));
    }

    /**
     * Toxicity of free chlorine against the same amount all as HOCl, with hypochlorite counted at a quarter to a third.
     *
     * <p>Source: Electric Power Research Institute, 1982, report EA-2481, short exposures of fish. An order of sensitivity, not
     * a criterion: the criteria are set on total residual chlorine.
     */
    public static ToxicShare toxicShare(double ph, double temperatureC) {
        double hocl = share(ph, temperatureC);
        return new ToxicShare(hocl + (1 - hocl) * WEAKER_LOW, hocl + (1 - hocl) * WEAKER_HIGH);
    }
}
