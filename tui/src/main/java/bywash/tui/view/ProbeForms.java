package bywash.tui.view;

import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.husbandry.probes.CalibrationResult;
import bywash.rules.husbandry.probes.CarePlan;
import bywash.rules.husbandry.probes.ProbeBook;
import bywash.rules.husbandry.probes.ProbeCareStatus;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Checks of the forms on probes, and the entries they come to; slope and offset stand there as soon as two points are typed. */
public final class ProbeForms {
    /** What was done to a probe. */
    public static final List<String> CARE =
            List.of("cleaned", "new membrane", "new electrolyte", "new reference", "cable mended", "moved", "replaced");

    /** Readings in millivolt. */
    public static final String MILLIVOLT = "mV";

    private static final int FIRST = 2;
    private static final int POINTS = 3;
    private static final int TEMPERATURE = FIRST + 2 * POINTS;

    private ProbeForms() {}

    /** Probes that are calibrated. */
    public static List<String> probes(Frame frame) {
        return frame.snapshot().site().probes().stream()
                .filter(p -> CarePlan.of(p.quantity()) != null)
                .map(Probe::id)
                .toList();
    }

    private static Optional<Probe> probe(Frame frame, String id) {
        return frame.snapshot().site().probe(id);
    }

    private static Optional<ProbeCareStatus> care(Frame frame, String id) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? Optional.empty()
                : season.probes().stream().filter(c -> c.probe().equals(id)).findFirst();
    }

    /** The unit of a probe's standards, as said to the grower. */
    public static String unit(Frame frame, String id) {
        return probe(frame, id).map(p -> p.quantity().unit()).orElse("");
    }

    /** When it was calibrated last and what was found. */
    public static String last(Frame frame, String id) {
        return care(frame, id).map(c -> calibrated(frame, c)).orElse("");
    }

    private static String calibrated(Frame frame, ProbeCareStatus care) {
        if (care.calibrations().isEmpty()) {
            return "none on record";
        }
        CalibrationResult last = care.calibrations().get(care.calibrations().size() - 1);
        return "last " + Words.shortSpan(last.at(), frame.at()) + " ago";
    }

    /** Fields: probe, readings in, then standard and reading three times, temperature, when. */
    public static FormCheck calibrate(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        Probe probe = probe(frame, in.choice(0)).orElse(null);
        if (probe == null) {
            in.problem("The site has no probe that is calibrated.");
            return in.open();
        }
        boolean millivolt = in.choice(1).equals(MILLIVOLT);
        if (millivolt && probe.quantity() != Quantity.PH && probe.quantity() != Quantity.ORP) {
            in.problem("Readings in: only a pH probe is read in mV; choose its own unit.");
        }
        List<CalibrationPoint> points = points(in, filled, probe, millivolt);
        double temperature = in.blank(TEMPERATURE) ? Double.NaN : in.number(TEMPERATURE, "Temperature", 0, 60);
        Instant at = in.when(TEMPERATURE + 1);
        Calibrate entry = new Calibrate(at, probe.id(), "", points, temperature);
        if (in.good()) {
            String fault = ProbeBook.fault(frame.snapshot().site(), entry);
            if (fault.isEmpty()) {
                found(frame, in, entry, millivolt);
            }
        }
        return in.done("Calibration of " + probe.id() + " entered.", entry);
    }

    private static List<CalibrationPoint> points(FormReader in, Filled filled, Probe probe, boolean millivolt) {
        String unit = probe.quantity().unit();
        List<CalibrationPoint> points = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            int field = FIRST + 2 * i;
            if (in.blank(field) && in.blank(field + 1)) {
                continue;
            }
            double standard = filled.number(field);
            double reading = filled.number(field + 1);
            boolean ph = probe.quantity() == Quantity.PH;
            if (Double.isNaN(standard) || ph && !(standard >= 0 && standard <= 14)) {
                in.problem("Standard " + (i + 1) + ": type " + (ph ? "the pH of the buffer, 0 to 14." : unit + "."));
            } else if (Double.isNaN(reading) || ph && !millivolt && !(reading >= 0 && reading <= 14)) {
                in.problem("Reading " + (i + 1) + ": type what the probe showed in it, before it was adjusted.");
            } else {
                points.add(new CalibrationPoint(standard, unit, reading, millivolt ? "mV" : unit));
            }
        }
        if (points.isEmpty() && in.good()) {
            in.problem("Type a standard and what the probe showed in it; pH wants two buffers.");
        } else if (points.size() == 1 && probe.quantity() == Quantity.PH && in.good()) {
            in.problem("Reading 2: pH wants a second buffer, or the slope is not known.");
        }
        return points;
    }

    private static void found(Frame frame, FormReader in, Calibrate entry, boolean millivolt) {
        CalibrationResult result = ProbeBook.result(frame.snapshot().site(), entry);
        switch (result.verdict()) {
            case GOOD -> {}
            case USABLE, FAULTY -> in.warn("Found: " + result.words() + ".");
        }
    }

    /** What the points typed come to; empty while they make no calibration. */
    public static String result(Frame frame, Filled filled) {
        FormCheck check = calibrate(frame, filled);
        return check.ready() && check.entries().get(0) instanceof Calibrate entry
                ? "Found: " + ProbeBook.result(frame.snapshot().site(), entry).words() + "."
                : "";
    }

    /** Fields: probe, care, when. */
    public static FormCheck care(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        if (in.blank(0)) {
            in.problem("The site has no probe that is calibrated.");
            return in.open();
        }
        Instant at = in.when(2);
        if (in.choice(1).equals("replaced")) {
            in.warn("A new probe is suspect until it is calibrated.");
        }
        return in.done(in.choice(0) + ": " + in.choice(1) + ".", new ProbeCare(at, in.choice(0), in.choice(1)));
    }

    /** What was done to it last. */
    public static String cared(Frame frame, String id) {
        return care(frame, id)
                .map(c -> c.careAt() == null
                        ? "none on record"
                        : c.care() + ", " + Words.shortSpan(c.careAt(), frame.at()) + " ago")
                .orElse("");
    }
}
