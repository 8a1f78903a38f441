package bywash.samples.simulation;

import java.util.Locale;
import java.util.SplittableRandom;

/** Disinfectant, pH, temperature, oxygen and oxidation potential of the well-mixed system water. */
final class WaterQuality {
    private static final double ORP_LAG_MIN = 4;

    private final double lossPerH;
    private double chlorineMg;
    private double mainsShare;
    private double rainShare;
    private double temperatureC = 22.5;
    private double orpMv = 310;
    private double oxygenSagMgL;
    private double oxygenSunMgL;

    /** @param lossPerH first-order loss of chlorine, 1/h */
    WaterQuality(double lossPerH) {
        this.lossPerH = lossPerH;
    }

    /** Water that came in: litres, what chlorine it carries, how warm it is, how much of it is fresh mains or rain. */
    record Added(double litres, double chlorineMg, double temperatureC, double mainsL, double rainL) {}

    void add(Added in, double systemL) {
        chlorineMg += in.chlorineMg();
        mainsShare += (in.mainsL() - mainsShare * in.litres()) / systemL;
        rainShare += (in.rainL() - rainShare * in.litres()) / systemL;
        temperatureC += (in.temperatureC() - temperatureC) * in.litres() / systemL;
    }

    /** What is spilled or leaks takes its chlorine along. */
    void remove(double litres, double systemL) {
        chlorineMg *= 1 - litres / systemL;
    }

    void step(double minutes, double systemL, boolean pumpOn, double tMin) {
        chlorineMg *= StrictMath.exp(-lossPerH * minutes / 60);
        double air = 22.5 + 1.2 * StrictMath.sin(2 * StrictMath.PI * (tMin - 240) / 1440);
        temperatureC += (air - temperatureC) * minutes / 600;
        double toward = 310
                + 6 * StrictMath.sin(2 * StrictMath.PI * tMin / 1440)
                + 90 * StrictMath.log1p(residualUgL(systemL) / 20);
        orpMv += (toward - orpMv) * minutes / ORP_LAG_MIN;
        oxygenSunMgL = 0.3 * StrictMath.sin(2 * StrictMath.PI * tMin / 1440);
        double sag = pumpOn ? 0 : 2.0;
        oxygenSagMgL += (sag - oxygenSagMgL) * minutes / 40;
    }

    double residualUgL(double systemL) {
        return chlorineMg / systemL * 1000;
    }

    String senml(SplittableRandom random) {
        double ph = 6.7 + 0.9 * mainsShare - 0.4 * rainShare + 0.01 * Gaussian.next(random);
        double t = temperatureC + 0.03 * Gaussian.next(random);
        return String.format(
                Locale.ROOT,
                "[{\"bn\":\"larkfield:fish:\",\"n\":\"ph\",\"u\":\"pH\",\"v\":%.3f},"
                        + "{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":%.2f}]",
                ph,
                t);
    }

    String oxygen(SplittableRandom random) {
        double mgL = 7.4 - 0.15 * (temperatureC - 22.5) - oxygenSagMgL + oxygenSunMgL + 0.03 * Gaussian.next(random);
        return String.format(Locale.ROOT, "{\"oxygen\":{\"mgl\":%.2f}}", mgL);
    }

    String orp(SplittableRandom random) {
        return String.format(Locale.ROOT, "%.1f", orpMv + 1.5 * Gaussian.next(random));
    }
}
