package bywash.samples.season;

import java.util.Locale;
import java.util.SplittableRandom;

/** The season's water, a day a step: temperature of the year and the day, nitrogen, alkalinity, pH and oxygen. */
final class WaterModel {
    private static final double VOLUME_L = 2400;
    private static final double TAN_SHARE = 0.0294;
    private static final double NO3_PER_N = 4.4266;
    /** The rest goes off as gas. */
    private static final double KEPT = 0.45;

    private static final double ALKALINITY_PER_N = 7.14;

    private final SplittableRandom random;
    private double weather;
    private double nitrateMgL = 12;
    private double alkalinityMgL = 95;
    private double tanMgL = 0.1;
    private double nitriteMgL = 0.05;
    private double bacteria = 0.3;
    private double feedG;
    private double oxygenTroubleMgL;

    WaterModel(SplittableRandom random) {
        this.random = random;
    }

    double temperatureC(int dayOfYear, double hour) {
        double season = 24.6 + 2.1 * Math.sin(2 * Math.PI * (dayOfYear - 115) / 365);
        return season + weather + 0.8 * Math.sin(2 * Math.PI * (hour - 9) / 24);
    }

    /** @param uptakeN nitrogen that the plants take, g */
    void day(double newFeedG, double doseN, double uptakeN, double mainsL) {
        weather = 0.85 * weather + 0.45 * random.nextGaussian();
        feedG = newFeedG;
        double madeN = newFeedG * TAN_SHARE + doseN;
        bacteria += 0.09 * (Math.max(0.3, madeN) - bacteria);
        double share = Math.min(1, bacteria / Math.max(0.05, madeN + tanMgL * VOLUME_L / 1000));
        double oxidised = (madeN + tanMgL * VOLUME_L / 1000) * (0.55 + 0.43 * share);
        tanMgL = Math.max(0.02, tanMgL + (madeN - oxidised) * 1000 / VOLUME_L);
        nitriteMgL = Math.max(0.02, 0.55 * nitriteMgL + 0.12 * oxidised * (1 - share) * 1000 / VOLUME_L + 0.02);
        nitrateMgL = Math.max(1, nitrateMgL + (oxidised - uptakeN) * 1000 / VOLUME_L * NO3_PER_N * KEPT);
        nitrateMgL *= 1 - mainsL / VOLUME_L;
        alkalinityMgL += -oxidised * ALKALINITY_PER_N * 1000 / VOLUME_L + 3.0 * uptakeN * 1000 / VOLUME_L;
        alkalinityMgL += (120 - alkalinityMgL) * mainsL / VOLUME_L;
        alkalinityMgL = Math.max(8, alkalinityMgL);
    }

    /** Potassium bicarbonate, g: half its mass as CaCO3. */
    void bicarbonate(double grams) {
        alkalinityMgL += grams * 0.5 * 1000 / VOLUME_L;
    }

    void oxygenTrouble(double mgL) {
        oxygenTroubleMgL = mgL;
    }

    double alkalinityMgL() {
        return alkalinityMgL;
    }

    double ph() {
        return 6.8 + 0.9 * Math.log10(alkalinityMgL / 60);
    }

    double oxygenMgL(int dayOfYear, double hour) {
        double t = temperatureC(dayOfYear, hour);
        double saturation = 14.6 - 0.394 * t + 0.0077 * t * t - 0.000065 * t * t * t;
        return saturation - 0.7 - 0.0062 * feedG - oxygenTroubleMgL + 0.25 * Math.sin(2 * Math.PI * (hour - 8) / 24);
    }

    double test(double value, double step) {
        double seen = value * (1 + 0.06 * random.nextGaussian());
        return Math.max(0, Math.round(Math.round(seen / step) * step * 1000) / 1000.0);
    }

    double tanMgL() {
        return tanMgL;
    }

    double nitriteMgL() {
        return nitriteMgL;
    }

    double nitrateMgL() {
        return nitrateMgL;
    }

    String number(double value, double noise, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value + noise * random.nextGaussian());
    }
}
