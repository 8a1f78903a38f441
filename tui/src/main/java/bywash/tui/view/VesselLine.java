package bywash.tui.view;

import bywash.rules.detect.FlowFinding;
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
 * @param left time to overflow or to dry, empty when neither comes
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
                units.netFlow(flow == null ? Double.NaN : flow.rateLMin()),
                units.height(status.freeboardMm()),
                flow == null ? "waiting" : word(flow),
                flow == null ? "" : left(flow, frame.at()),
                flow == null ? Tone.PLAIN : tone(flow));
    }

    private static double share(double value) {
        return Math.max(0, Math.min(1, value));
    }

    private static String word(FlowFinding flow) {
        return switch (flow.verdict()) {
            case LEARNING -> "learning";
            case QUIET -> "steady";
            case PLANNED -> "top-up";
            case UNPLANNED_INFLOW -> "INFLOW";
            case UNPLANNED_LOSS -> "LOSS";
            case LINE_NOT_SHUT -> "NOT SHUT";
            case DRAIN_DOWN -> "drain-down";
        };
    }

    private static Tone tone(FlowFinding flow) {
        return switch (flow.verdict()) {
            case LEARNING, QUIET, PLANNED -> Tone.PLAIN;
            case DRAIN_DOWN -> Tone.WARNING;
            case UNPLANNED_INFLOW, UNPLANNED_LOSS, LINE_NOT_SHUT -> Tone.CRITICAL;
        };
    }

    private static String left(FlowFinding flow, Instant now) {
        Instant overflow = flow.overflowAt();
        if (overflow != null) {
            return overflow.isAfter(now) ? "over " + Words.shortSpan(now, overflow) : "over now";
        }
        Instant dry = flow.dryAt();
        return dry == null ? "" : "dry " + Words.shortSpan(now, dry);
    }
}
