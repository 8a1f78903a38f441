package bywash.tui.view;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.TopUp;
import bywash.rules.engine.VesselStatus;
import bywash.rules.site.Band;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One vessel with a level probe.
 *
 * @param fill level as a share of the overflow height, 0 to 1; NaN while unknown
 * @param usualLow lower end of the normal band, as such a share; NaN while unknown
 * @param usualHigh upper end likewise
 * @param word what its water does
 * @param left time until it spills or is dry, or until a declared top-up is in; empty when none of these comes
 */
public record VesselLine(
        String name,
        double fill,
        double usualLow,
        double usualHigh,
        String volume,
        String netFlow,
        String freeboard,
        String word,
        String left,
        Tone tone) {

    private static final double LEAST_L_MIN = 0.05;
    private static final double LEAST_ROOM_MM = 10;

    static VesselLine from(VesselStatus status, Frame frame, @Nullable Band usual) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        FlowFinding flow = status.flow();
        double overflowMm = status.vessel().overflowMm();
        return new VesselLine(
                status.vessel().id(),
                share(status.levelMm() / overflowMm),
                usual == null ? Double.NaN : share(usual.low() / overflowMm),
                usual == null ? Double.NaN : share(usual.high() / overflowMm),
                units.volume(status.volumeL()),
                units.netFlow(flow == null || checked(flow, frame) ? Double.NaN : rate(status, flow)),
                units.height(status.freeboardMm()),
                flow == null ? "waiting" : unseen(status, flow) ? "no level" : word(flow, frame),
                flow == null ? "" : left(status, flow, frame),
                flow == null ? Tone.PLAIN : tone(flow));
    }

    private static double share(double value) {
        return Math.max(0, Math.min(1, value));
    }

    /** While the line of a top-up is checked the rate is that of its line alone: water from elsewhere would be shown as none. */
    private static boolean checked(FlowFinding flow, Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        return flow.verdict() == Verdict.PLANNED && topUp != null && topUp.checking();
    }

    /** How fast pipes drain back is not known, and nothing is without a level. */
    private static double rate(VesselStatus status, FlowFinding flow) {
        return flow.verdict() == Verdict.DRAIN_DOWN || unseen(status, flow) ? Double.NaN : flow.rateLMin();
    }

    /** Whether it was quiet while its level could be believed, which it no longer can. */
    private static boolean unseen(VesselStatus status, FlowFinding flow) {
        return flow.verdict() == Verdict.QUIET && Double.isNaN(status.levelMm());
    }

    private static String word(FlowFinding flow, Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        return switch (flow.verdict()) {
            case LEARNING -> "learning";
            case QUIET -> frame.snapshot().feedUp() ? "steady" : ReadingLine.STALE;
            case PLANNED ->
                topUp == null || topUp.endedAt() == null
                        ? "top-up"
                        : TopUpProgress.runsOn(frame) ? "runs on" : "checking";
            case UNPLANNED_INFLOW -> "INFLOW";
            case UNPLANNED_LOSS -> "LOSS";
            case LINE_NOT_SHUT -> "NOT SHUT";
            case DRAIN_DOWN -> "drain-down";
        };
    }

    private static Tone tone(FlowFinding flow) {
        return switch (flow.verdict()) {
            case LEARNING, QUIET -> Tone.PLAIN;
            case PLANNED -> flow.overflowAt() == null ? Tone.PLAIN : Tone.WARNING;
            case DRAIN_DOWN -> Tone.WARNING;
            case UNPLANNED_INFLOW, UNPLANNED_LOSS, LINE_NOT_SHUT -> Tone.CRITICAL;
        };
    }

    /** Siphons lift a sump to its overflow and let it fall again: between swings there is room left. */
    static boolean hasRoom(VesselStatus status) {
        return status.freeboardMm() > LEAST_ROOM_MM;
    }

    private static String left(VesselStatus status, FlowFinding flow, Frame frame) {
        Instant now = frame.at();
        Instant overflow = flow.overflowAt();
        if (overflow != null) {
            String soon = hasRoom(status) ? "spill soon" : "spill now";
            return overflow.isAfter(now) ? "spill " + Words.shortSpan(now, overflow) : soon;
        }
        Instant dry = flow.dryAt();
        return dry == null ? toGo(flow, frame) : "dry " + Words.shortSpan(now, dry);
    }

    /** When a declared top-up will have brought its volume, at its rate; empty for other water, and while nothing comes. */
    private static String toGo(FlowFinding flow, Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        boolean runs = flow.verdict() == Verdict.PLANNED && flow.rateLMin() > LEAST_L_MIN;
        if (topUp == null || topUp.endedAt() != null || !runs || !topUp.vessel().equals(flow.vessel())) {
            return "";
        }
        double minutes = Math.max(0, topUp.plannedL() - topUp.enteredL()) / flow.rateLMin();
        Instant in = frame.at().plusSeconds(Math.round(minutes * 60));
        return minutes < 1 ? "shut it now" : "done " + Words.shortSpan(frame.at(), in);
    }
}
