package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.Condition;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Figures;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Alarms that follow from what the water balance found, and from freeboard. */
final class FlowRules {
    /** Freeboard under this share of the overflow height is near: 5 % level deadband of ISA-18.2, from memory. */
    private static final double FREEBOARD_SHARE = 0.05;

    private static final Duration RUNS_OVER = Duration.ofSeconds(30);
    private static final Duration OVERFLOW_SOON = Duration.ofMinutes(20);

    private final AlarmBoard board;
    private final Brought brought;

    FlowRules(AlarmBoard board, Brought brought) {
        this.board = board;
        this.brought = brought;
    }

    void tick(Vessel vessel, @Nullable FlowFinding finding, double levelMm, Instant at) {
        Verdict verdict = finding == null ? null : finding.verdict();
        set(AlarmKind.UNPLANNED_INFLOW, vessel, at, verdict == Verdict.UNPLANNED_INFLOW, finding);
        set(AlarmKind.UNPLANNED_LOSS, vessel, at, verdict == Verdict.UNPLANNED_LOSS, finding);
        set(AlarmKind.LINE_NOT_SHUT, vessel, at, verdict == Verdict.LINE_NOT_SHUT, finding);
        if (Double.isNaN(levelMm)) {
            board.unknown(AlarmKind.OVERFLOW_NEAR, vessel.id());
        } else {
            overflow(vessel, finding, levelMm, at);
        }
    }

    private void set(AlarmKind kind, Vessel vessel, Instant at, boolean holds, @Nullable FlowFinding finding) {
        board.set(kind, vessel.id(), at, holds && finding != null ? condition(kind, vessel, finding, at) : null);
    }

    private Condition condition(AlarmKind kind, Vessel vessel, FlowFinding f, Instant at) {
        Instant deadline = f.rateLMin() < 0 ? f.dryAt() : f.overflowAt();
        String consequence = kind == AlarmKind.UNPLANNED_LOSS ? "" : brought.consequence(f.source(), at);
        return new Condition(message(kind, vessel, f, at), f.why(), deadline, values(kind, f), consequence);
    }

    private static String message(AlarmKind kind, Vessel vessel, FlowFinding f, Instant at) {
        String litres = f.moved().words();
        String rate = Figures.of(StrictMath.abs(f.rateLMin()), 1) + " L/min";
        String from = f.source().equals("unknown") || f.source().isEmpty() ? "" : " from " + f.source();
        if (f.until() != null) {
            return kind == AlarmKind.UNPLANNED_LOSS
                    ? "The loss from " + vessel.id() + " has ended: " + litres + " left it in all"
                    : "The inflow into " + vessel.id() + " has ended: " + litres + " came in" + from;
        }
        return switch (kind) {
            case UNPLANNED_LOSS ->
                "Water is leaving " + vessel.id() + " unplanned: " + rate + ", " + litres + " so far"
                        + dry(vessel, f, at);
            case LINE_NOT_SHUT -> "The line into " + vessel.id() + " is not shut: " + rate + ", " + ranOn(f);
            default ->
                "Water nobody declared is entering " + vessel.id() + from + ": " + rate + ", " + litres + " so far";
        };
    }

    /** What ran on after the end, or beyond what was declared. */
    private static String ranOn(FlowFinding f) {
        return f.ranOver()
                ? f.beyond().words() + " beyond the " + Figures.of(f.declaredL(), 0) + " L declared"
                : f.moved().words() + " so far";
    }

    private static String dry(Vessel vessel, FlowFinding f, Instant at) {
        Instant dryAt = f.dryAt();
        if (dryAt == null) {
            return "";
        }
        String what = vessel.role() == VesselRole.SUMP ? "; the pump runs dry in " : "; empty in ";
        return what + Text.span(at, dryAt, f.rateLMin(), f.rateSeLMin());
    }

    private static Map<String, Object> values(AlarmKind kind, FlowFinding f) {
        boolean loss = kind == AlarmKind.UNPLANNED_LOSS;
        Map<String, Object> values = new LinkedHashMap<>();
        values.put(loss ? "loss_l_min" : "inflow_l_min", Text.round(StrictMath.abs(f.rateLMin()), 1));
        values.put("volume_l", Text.round(f.moved().likelyL(), 0));
        values.put("volume_low_l", Text.round(f.moved().lowL(), 0));
        values.put("volume_high_l", Text.round(f.moved().highL(), 0));
        if (f.ranOver()) {
            values.put("declared_l", Text.round(f.declaredL(), 0));
        }
        values.put("since", Objects.toString(f.since(), ""));
        if (f.until() != null) {
            values.put("until", f.until().toString());
        }
        if (loss) {
            values.put("dry_at", Objects.toString(f.dryAt(), ""));
        } else {
            values.put("overflow_at", Objects.toString(f.overflowAt(), ""));
            values.put("source", f.source());
        }
        return values;
    }

    private static String overflows(FlowFinding finding, Instant overflowAt, Instant at) {
        return overflowAt.isAfter(at.plus(RUNS_OVER))
                ? "; at this rate it overflows in "
                        + Text.span(at, overflowAt, finding.rateLMin(), finding.rateSeLMin())
                : "; it runs over now or at the top of its next swing";
    }

    private void overflow(Vessel vessel, @Nullable FlowFinding finding, double levelMm, Instant at) {
        double freeboardMm = vessel.overflowMm() - levelMm;
        double near = vessel.overflowMm() * FREEBOARD_SHARE;
        if (board.stands(AlarmKind.OVERFLOW_NEAR, vessel.id())) {
            near *= 1.5;
        }
        Instant overflowAt = finding == null ? null : finding.overflowAt();
        boolean soon = finding != null
                && overflowAt != null
                && finding.verdict() != Verdict.PLANNED
                && overflowAt.isBefore(at.plus(OVERFLOW_SOON));
        Condition condition = null;
        if (freeboardMm < near || soon) {
            String when = finding == null || overflowAt == null ? "" : overflows(finding, overflowAt, at);
            condition = Condition.of(
                    vessel.id() + " has " + Figures.of(StrictMath.max(0, freeboardMm), 0) + " mm of freeboard left"
                            + when,
                    "Level " + Figures.of(levelMm, 0) + " mm, overflow at " + Figures.of(vessel.overflowMm(), 0)
                            + " mm.",
                    overflowAt,
                    "freeboard_mm",
                    Text.round(freeboardMm, 0),
                    "overflow_at",
                    Objects.toString(overflowAt, ""));
        }
        board.set(AlarmKind.OVERFLOW_NEAR, vessel.id(), at, condition);
    }
}
