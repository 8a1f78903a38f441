package bywash.rules.husbandry.probes;

import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.probes.ProbeCareStatus.State;
import bywash.rules.site.Probe;
import bywash.rules.water.PhCalibration;
import bywash.rules.water.PhCalibration.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** One probe's book. */
final class ProbeCard {
    private static final int MOST = 200;
    private static final int JUDGED = 3;
    /** Even one that drifts fast is not calibrated every day. */
    private static final double LEAST_DAYS = 7;

    private static final Duration BEFORE_DUE = Duration.ofDays(7);
    private static final Duration SAME_WATER = Duration.ofMinutes(30);

    private final Probe probe;
    private final CarePlan plan;
    private final List<CalibrationResult> calibrations = new ArrayList<>();
    private final List<TestDifference> differences = new ArrayList<>();
    private @Nullable PhCalibration electrode;
    private @Nullable Instant calibratedAt;
    private @Nullable Drift drift;
    private String care = "";
    private @Nullable Instant careAt;
    private double value = Double.NaN;
    private Instant valueAt = Instant.MIN;

    ProbeCard(Probe probe, CarePlan plan) {
        this.probe = probe;
        this.plan = plan;
    }

    void reading(Instant at, double newValue) {
        value = newValue;
        valueAt = at;
    }

    /** @throws IllegalArgumentException where the points make no calibration */
    void calibrated(Calibrate entry) {
        if (!entry.points().isEmpty()) {
            CalibrationResult result = Calibrations.of(probe.quantity(), entry, electrode);
            if (calibratedAt != null && !Double.isNaN(result.error())) {
                double days = Duration.between(calibratedAt, entry.at()).getSeconds() / 86_400.0;
                drift = days >= 1
                        ? new Drift(result.error(), days, probe.quantity().unit())
                        : drift;
            }
            electrode = Calibrations.inMillivolt(entry) ? Calibrations.electrode(entry) : null;
            calibrations.add(result);
            trim(calibrations);
        }
        calibratedAt = entry.at();
        differences.clear();
    }

    void cared(ProbeCare entry) {
        care = entry.care();
        careAt = entry.at();
    }

    void tested(WaterTest test) {
        boolean near = valueAt.isAfter(Instant.MIN)
                && Duration.between(valueAt, test.at()).abs().compareTo(sameWater(probe)) <= 0;
        if (near) {
            differences.add(new TestDifference(test.at(), value, test.value()));
            trim(differences);
        }
    }

    static Duration sameWater(Probe probe) {
        return probe.every().compareTo(SAME_WATER) > 0 ? probe.every() : SAME_WATER;
    }

    private static void trim(List<?> list) {
        if (list.size() > MOST) {
            list.remove(0);
        }
    }

    /** Sooner than usual where it was seen to drift past its error before. */
    private @Nullable Instant dueAt() {
        if (calibratedAt == null) {
            return null;
        }
        double days = plan.every().toDays();
        if (drift != null) {
            days = Math.min(days, Math.max(LEAST_DAYS, plan.error() / StrictMath.abs(drift.perDay())));
        }
        return calibratedAt.plusSeconds(Math.round(days * 86_400));
    }

    /** Mean of the last differences; NaN with fewer than two. */
    private double disagreement() {
        int n = Math.min(JUDGED, differences.size());
        if (n < 2) {
            return Double.NaN;
        }
        return differences.subList(differences.size() - n, differences.size()).stream()
                .mapToDouble(TestDifference::difference)
                .average()
                .orElse(Double.NaN);
    }

    ProbeCareStatus status(Instant now) {
        Instant due = dueAt();
        CalibrationResult latest = calibrations.isEmpty() ? null : calibrations.get(calibrations.size() - 1);
        double off = disagreement();
        State state = state(now, due, latest, off);
        String suspect = switch (state) {
            case GOOD, NOT_ON_RECORD, DUE_SOON -> "";
            case OVERDUE ->
                replacedSince()
                        ? "replaced and not calibrated since"
                        : "calibration overdue by " + days(due, now) + " d";
            case DISAGREES ->
                String.format(
                        Locale.ROOT,
                        "%+.2f%s from the last %d manual tests",
                        off,
                        Drift.spaced(probe.quantity().unit()),
                        Math.min(JUDGED, differences.size()));
            case FAULTY -> "calibration found it faulty";
        };
        return new ProbeCareStatus(
                probe.id(),
                probe.quantity().word(),
                state,
                calibrations,
                drift,
                differences,
                due,
                care,
                careAt,
                suspect,
                words(now, due, latest, suspect));
    }

    private State state(Instant now, @Nullable Instant due, @Nullable CalibrationResult latest, double off) {
        if (latest != null && latest.at().equals(calibratedAt) && latest.verdict() == Verdict.FAULTY) {
            return State.FAULTY;
        }
        if (StrictMath.abs(off) > 2 * plan.error()) {
            return State.DISAGREES;
        }
        if (replacedSince()) {
            return State.OVERDUE;
        }
        if (due == null) {
            return State.NOT_ON_RECORD;
        }
        if (now.isAfter(due)) {
            return State.OVERDUE;
        }
        return now.isAfter(due.minus(BEFORE_DUE)) ? State.DUE_SOON : State.GOOD;
    }

    private boolean replacedSince() {
        Instant at = careAt;
        return at != null
                && (care.contains("replaced") || care.contains("new probe"))
                && (calibratedAt == null || calibratedAt.isBefore(at));
    }

    private static long days(@Nullable Instant from, Instant to) {
        return from == null ? 0 : Math.max(1, Duration.between(from, to).toDays());
    }

    private String words(Instant now, @Nullable Instant due, @Nullable CalibrationResult latest, String suspect) {
        List<String> parts = new ArrayList<>();
        if (!suspect.isEmpty()) {
            parts.add("suspect: " + suspect);
        }
        if (due == null || calibratedAt == null) {
            parts.add("no calibration on record");
        } else {
            parts.add("calibrated " + Duration.between(calibratedAt, now).toDays() + " d ago");
            if (latest != null) {
                parts.add(latest.words());
            }
            if (now.isBefore(due)) {
                parts.add("due in " + Duration.between(now, due).toDays() + " d");
            }
        }
        if (drift != null) {
            parts.add(drift.words());
        }
        return String.join("; ", parts);
    }
}
