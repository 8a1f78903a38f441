package bywash.rules.chlorine;

import bywash.rules.chlorine.WaterSignals.Hearing;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.text.Figures;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Weighs the probes against the residual: how probable each reading is at each residual, as the factor by which it moves the
 * odds that the acute criterion is passed. The steps of the words for a factor are those of R. E. Kass and A. E. Raftery, 1995
 * (bare mention, positive, strong, very strong): up to 3 hardly tells, up to 20 tells, up to 150 tells much, above very much.
 *
 * <p>The potential answers chlorine as one of {@link ProbeAnswer}; one probe in two hundred is taken as showing something else. The
 * first minutes count less: water mixes and a probe follows within about six minutes. pH and temperature tell how much water of the
 * mains' kind came in: whether what the balance counts is of that kind, and whether more came in than it counts.
 */
final class Evidence {
    private static final double ELSE = 0.005;
    private static final double ELSE_RANGE_MV = 400;
    private static final double KEPT = 0.8;
    private static final double MISLED = 0.2;

    /** A chance below this needs no words on temperature and pH. */
    private static final double MATTERS = 0.005;

    /** Nor does a smaller weight of theirs. */
    private static final double WORTH_A_LINE = 1.5;

    private static final double ROOT_TWO_PI = StrictMath.sqrt(2 * StrictMath.PI);

    private final WaterSignals signals;
    private final Mains mains;
    private final List<String> lines = new ArrayList<>();
    private @Nullable Likelihood heard;

    Evidence(WaterSignals signals, Mains mains) {
        this.signals = signals;
        this.mains = mains;
    }

    List<String> lines() {
        return lines;
    }

    /**
     * Lets every probe that can be heard speak.
     *
     * @param arrived share of the residual that has had time to reach the probe, 0 to 2
     * @param mainsShare share of the system that the balance knows to have come in, 0 to 1
     */
    void weigh(Instant at, Posterior posterior, double arrived, double mainsShare) {
        potential(at, posterior, arrived);
        if (mains.disinfectant() != Disinfectant.NONE && mains.residualMgL() > 0) {
            SignalBaseline t = signals.temperature();
            if (signals.temperatureHearing(at) == Hearing.GOOD) {
                kind(new Kind("Temperature", " C", t, mains.temperatureC() - t.usual(), 3), posterior, mainsShare);
            }
            SignalBaseline ph = signals.ph();
            if (signals.phHearing(at) == Hearing.GOOD) {
                kind(new Kind("pH", "", ph, mains.ph() - ph.usual(), 0.3), posterior, mainsShare);
            }
        }
    }

    /**
     * A quantity that mains water moves.
     *
     * @param whole how far a system of mains water alone would be from its usual
     * @param least a smaller distance tells nothing
     */
    private record Kind(String name, String unit, SignalBaseline signal, double whole, double least) {}

    private void potential(Instant at, Posterior posterior, double arrived) {
        switch (signals.orpHearing(at)) {
            case NO_PROBE -> lines.add("ORP: no probe, so less is certain (weight 1)");
            case SILENT -> lines.add("ORP: no reading, so less is certain (weight 1)");
            case STUCK -> lines.add("ORP: stuck on one value, so less is certain (weight 1)");
            case LEARNING -> lines.add("ORP: its usual value is still being learned (weight 1)");
            case JUMPED ->
                lines.add(String.format(
                        Locale.ROOT,
                        "ORP: jumped %+.0f mV within a minute, faster than water mixes: probe moved, or something dosed"
                                + " beside it (weight 1)",
                        signals.jumpMv()));
            case GOOD -> {
                double error = signals.riseErrorMv();
                double rise = signals.riseMv();
                Likelihood likelihood = new OfPotential(rise, error, arrived);
                heard = likelihood;
                double factor = posterior.take(likelihood);
                lines.add("ORP: " + Figures.signed(rise, 0) + " mV, " + Figures.signed(rise / error, 1)
                        + " sigma from its usual (" + words(factor) + ")");
            }
        }
    }

    /** How probable a rise of the potential is; one residual is asked for each answer in turn. */
    private static final class OfPotential implements Likelihood {
        private final double riseMv;
        private final double errorMv;
        private final double arrived;
        private final double ofFouled;
        private double ofUgL = Double.NaN;
        private double fold;

        OfPotential(double riseMv, double errorMv, double arrived) {
            this.riseMv = riseMv;
            this.errorMv = errorMv;
            this.arrived = arrived;
            this.ofFouled = ofRise(0);
        }

        private double ofRise(double expectedMv) {
            return (1 - ELSE) * response(expectedMv, riseMv, errorMv) + ELSE / ELSE_RANGE_MV;
        }

        @Override
        public double of(double ugL, ProbeAnswer answer, Water water) {
            if (answer == ProbeAnswer.FOULED) {
                return ofFouled;
            }
            if (ugL != ofUgL) {
                ofUgL = ugL;
                fold = ProbeAnswer.fold(ugL * arrived);
            }
            return ofRise(answer.riseOfFoldMv(fold));
        }
    }

    /** Density of the rise where another is expected; a fifth of what is expected is open. */
    private static double response(double expectedMv, double riseMv, double errorMv) {
        double error = StrictMath.sqrt(errorMv * errorMv + 0.04 * expectedMv * expectedMv);
        return normal(riseMv - expectedMv, error);
    }

    /** What the potential says, for {@link Joint}; null where it is not heard. */
    @Nullable
    Likelihood heard() {
        return heard;
    }

    private void kind(Kind kind, Posterior posterior, double mainsShare) {
        if (StrictMath.abs(kind.whole) < kind.least) {
            return;
        }
        double shift = kind.signal.rise();
        double spread = 2 * kind.signal.spread();
        double misled = MISLED * normal(shift, 4 * spread);
        double known = mainsShare * kind.whole;
        double ofMains = likeMains(shift, known, spread);
        // water of another kind may be like anything, within as much as mains water would do
        double ofOther = normal(shift, StrictMath.sqrt(spread * spread + known * known));
        double factor = posterior.takeOfWater((c, water) -> {
            double fits = switch (water) {
                case MAINS -> ofMains;
                case OTHER -> ofOther;
                case UNSEEN -> likeMains(shift, unseenShare(c, mainsShare) * kind.whole, spread);
            };
            return (1 - MISLED) * fits + misled;
        });
        boolean matters = mainsShare > 0 || posterior.passed() > MATTERS;
        if (matters && (factor > WORTH_A_LINE || factor < 1 / WORTH_A_LINE)) {
            lines.add(kind.name + ": " + Figures.signed(shift, 2) + kind.unit + " from its usual (" + words(factor)
                    + ")");
        }
    }

    private double unseenShare(double ugL, double mainsShare) {
        return StrictMath.max(mainsShare, StrictMath.min(0.5, ugL / 1000 / (mains.residualMgL() * KEPT)));
    }

    private static double likeMains(double shift, double expected, double spread) {
        return normal(shift - expected, StrictMath.sqrt(spread * spread + 0.25 * expected * expected));
    }

    private static double normal(double miss, double sd) {
        double z = StrictMath.min(30, StrictMath.abs(miss / sd));
        return StrictMath.exp(-0.5 * z * z) / (sd * ROOT_TWO_PI);
    }

    /** The factor with a word for how much it says. */
    static String words(double factor) {
        double size = factor >= 1 ? factor : 1 / factor;
        String word = size < 3 ? "hardly tells" : size < 20 ? "tells" : size < 150 ? "tells much" : "tells very much";
        String side = size < 3 ? "" : factor >= 1 ? " for" : " against";
        String number = Figures.of(size, size < 9.95 ? 1 : 0);
        return "weight " + (factor >= 1 || number.equals("1.0") ? "" : "1/") + number + ", " + word + side;
    }
}
