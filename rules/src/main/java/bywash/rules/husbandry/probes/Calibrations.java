package bywash.rules.husbandry.probes;

import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.site.Quantity;
import bywash.rules.water.PhCalibration;
import bywash.rules.water.PhCalibration.Verdict;
import bywash.rules.water.PhElectrode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Works out a calibration from its points. A pH electrode in mV by {@link PhCalibration}; other probes by the straight line reading =
 * a + b standard through two points or more, or by the ratio or the difference in one. The bounds for probes other than pH are common
 * practice, no source: slope 95 to 105 % good, 85 to 115 % usable; offset within once or three times the error of {@link CarePlan}.
 */
final class Calibrations {
    private static final double USUAL_C = 25;

    private Calibrations() {}

    /**
     * Works it out.
     *
     * @param before the pH calibration that held until now; null where none
     * @throws IllegalArgumentException where the points are no calibration of such a probe; says what would be right
     */
    static CalibrationResult of(Quantity quantity, Calibrate entry, @Nullable PhCalibration before) {
        if (quantity == Quantity.PH && inMillivolt(entry)) {
            return electrode(entry, before);
        }
        CarePlan plan = CarePlan.of(quantity);
        if (plan == null) {
            throw new IllegalArgumentException("a " + quantity.word() + " probe is not calibrated");
        }
        for (CalibrationPoint p : entry.points()) {
            if (!p.standardUnit().equals(quantity.unit()) || !p.readingUnit().equals(quantity.unit())) {
                throw new IllegalArgumentException("points in " + p.standardUnit() + " and " + p.readingUnit()
                        + "; both in " + quantity.unit() + (quantity == Quantity.PH ? ", or readings in mV" : ""));
            }
        }
        return line(quantity, entry, plan);
    }

    static boolean inMillivolt(Calibrate entry) {
        return entry.points().stream()
                .allMatch(p -> p.standardUnit().equals("pH") && p.readingUnit().equals("mV"));
    }

    /** The electrode's own calibration, of two or three buffers. */
    static PhCalibration electrode(Calibrate entry) {
        List<PhCalibration.Point> points = new ArrayList<>();
        entry.points().forEach(p -> points.add(new PhCalibration.Point(p.standard(), p.reading())));
        return PhCalibration.of(points, temperature(entry));
    }

    private static double temperature(Calibrate entry) {
        return Double.isNaN(entry.temperatureC()) ? USUAL_C : entry.temperatureC();
    }

    private static CalibrationResult electrode(Calibrate entry, @Nullable PhCalibration before) {
        PhCalibration now = electrode(entry);
        double error = Double.NaN;
        if (before != null && before.slopeMv() > 0) {
            error = largest(entry.points().stream()
                    .map(p -> before.ph(p.reading()) - p.standard())
                    .toList());
        }
        return new CalibrationResult(entry.at(), now.slopePercent(), now.offsetMv(), "mV", error, now.verdict());
    }

    private static double largest(List<Double> errors) {
        double worst = 0;
        for (double e : errors) {
            worst = StrictMath.abs(e) > StrictMath.abs(worst) ? e : worst;
        }
        return worst;
    }

    private static CalibrationResult line(Quantity quantity, Calibrate entry, CarePlan plan) {
        List<CalibrationPoint> points = entry.points();
        double error =
                largest(points.stream().map(p -> p.reading() - p.standard()).toList());
        double span = points.stream()
                        .mapToDouble(CalibrationPoint::standard)
                        .max()
                        .orElse(0)
                - points.stream().mapToDouble(CalibrationPoint::standard).min().orElse(0);
        double slope = span > 0 ? 100 * fit(points) : ratio(quantity, points.get(0));
        double offset = points.stream()
                .mapToDouble(p -> p.reading() - p.standard())
                .reduce((a, b) -> StrictMath.abs(a) <= StrictMath.abs(b) ? a : b)
                .orElse(0);
        String unit = quantity.unit();
        if (quantity == Quantity.PH) {
            offset = -offset * PhElectrode.idealSlopeMv(temperature(entry));
            unit = "mV";
        }
        return new CalibrationResult(
                entry.at(), slope, offset, unit, error, verdict(slope, Double.isNaN(slope) ? error : 0, plan));
    }

    /** Least-squares slope of reading over standard. */
    private static double fit(List<CalibrationPoint> points) {
        double meanX = points.stream()
                .mapToDouble(CalibrationPoint::standard)
                .average()
                .orElseThrow();
        double meanY =
                points.stream().mapToDouble(CalibrationPoint::reading).average().orElseThrow();
        double sxx = 0;
        double sxy = 0;
        for (CalibrationPoint p : points) {
            sxx += (p.standard() - meanX) * (p.standard() - meanX);
            sxy += (p.standard() - meanX) * (p.reading() - meanY);
        }
        return sxy / sxx;
    }

    /** One point tells a slope only where the zero is the probe's own: oxygen and conductivity. */
    private static double ratio(Quantity quantity, CalibrationPoint point) {
        boolean own = quantity == Quantity.DISSOLVED_OXYGEN || quantity == Quantity.CONDUCTIVITY;
        return own && point.standard() > 0 ? 100 * point.reading() / point.standard() : Double.NaN;
    }

    private static Verdict verdict(double slope, double offset, CarePlan plan) {
        double off = StrictMath.abs(offset);
        if (slope < 85 || slope > 115 || off > 3 * plan.error()) {
            return Verdict.FAULTY;
        }
        return slope < 95 || slope > 105 || off > plan.error() ? Verdict.USABLE : Verdict.GOOD;
    }
}
