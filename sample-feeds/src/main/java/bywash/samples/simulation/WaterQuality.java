package bywash.samples.simulation;

import java.util.Locale;
import java.util.SplittableRandom;

/** Disinfectant, pH, temperature, oxygen and oxidation potential of the well-mixed system water. */
final class WaterQuality {
    private static final double DECAY_PER_H = 0.4;
    private static final double MAINS_C = 11;
    private static final double ORP_LAG_MIN = 4;

    private double chlorineMg;
    private double mainsShare;
    private double temperatureC = 22.5;
    private double orpMv = 310;
    private double oxygenSagMgL;

    void step(
            double minutes,
            double addedChlorineMg,
            double addedMainsL,
            double systemL,
            boolean pumpOn,
            double tMin,
            SplittableRandom random) {
        chlorineMg = (chlorineMg + addedChlorineMg) * Math.exp(-DECAY_PER_H * minutes / 60);
        mainsShare = (mainsShare * (systemL - addedMainsL) + addedMainsL) / systemL;
        temperatureC += (MAINS_C - temperatureC) * addedMainsL / systemL;
        double air = 22.5 + 1.2 * Math.sin(2 * Math.PI * (tMin - 240) / 1440);
        temperatureC += (air - temperatureC) * minutes / 600;
        double toward = 310 + 6 * Math.sin(2 * Math.PI * tMin / 1440) + 90 * Math.log1p(residualUgL(systemL) / 20);
        orpMv += (toward - orpMv) * minutes / ORP_LAG_MIN;
        double sag = pumpOn ? 0 : 2.0;
        oxygenSagMgL += (sag - oxygenSagMgL) * minutes / 40;
    }

    double residualUgL(double systemL) {
        return chlorineMg / systemL * 1000;
    }

    String senml(SplittableRandom random) {
        double ph = 6.7 + 0.9 * mainsShare + 0.01 * random.nextGaussian();
        double t = temperatureC + 0.03 * random.nextGaussian();
        return String.format(
                Locale.ROOT,
                "[{\"bn\":\"larkfield:fish:\",\"n\":\"ph\",\"u\":\"pH\",\"v\":%.3f},"
                        + "{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":%.2f}]",
                ph,
                t);
    }

    String oxygen(double tMin, SplittableRandom random) {
        double mgL = 7.4
                - 0.15 * (temperatureC - 22.5)
                - oxygenSagMgL
                + 0.3 * Math.sin(2 * Math.PI * tMin / 1440)
                + 0.03 * random.nextGaussian();
        return String.format(Locale.ROOT, "{\"oxygen\":{\"mgl\":%.2f}}", mgL);
    }

    String orp(SplittableRandom random) {
        return String.format(Locale.ROOT, "%.1f", orpMv + 1.5 * random.nextGaussian());
    }
}
