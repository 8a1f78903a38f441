package bywash.tui.view;

import bywash.rules.detect.BalanceLine;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.Moved;
import bywash.rules.detect.TopUp;
import bywash.rules.site.VesselRole;
import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** What moved into or out of a vessel, in the same figure and range as its alarm. */
final class MovedWords {
    private MovedWords() {}

    /** Null where nothing has moved lately. */
    static @Nullable Passage of(BalanceLine line, @Nullable FlowFinding flow, Frame frame) {
        if (flow != null) {
            Passage now = now(flow, frame);
            if (now != null) {
                return now;
            }
        }
        Moved moved = line.moved();
        return moved == null ? null : past(line.subject(), moved, frame);
    }

    private static @Nullable Passage now(FlowFinding flow, Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        Instant since = flow.since();
        if (since == null) {
            return null;
        }
        String litres = units.spread(flow.moved());
        String from = " since " + clock(since, frame);
        return switch (flow.verdict()) {
            case UNPLANNED_INFLOW -> loud(litres + " came in" + from + ", not declared");
            case UNPLANNED_LOSS -> loud(litres + " left it" + from + ", not declared");
            case LINE_NOT_SHUT ->
                loud(
                        ended(frame)
                                ? litres + " came in" + from + ", when the top-up was ended"
                                : units.spread(flow.beyond()) + " more than the " + units.volume(flow.declaredL())
                                        + " declared came in" + from);
            case PLANNED ->
                Passage.plain(
                        "Moved",
                        litres + (flow.rateLMin() < 0 ? " left it" : " came in") + from + declared(flow, frame));
            case LEARNING, QUIET, DRAIN_DOWN -> null;
        };
    }

    private static Passage loud(String text) {
        return new Passage("Moved", "! " + text, Tone.WARNING);
    }

    private static boolean ended(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        return topUp != null && topUp.endedAt() != null;
    }

    private static String declared(FlowFinding flow, Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        if (topUp == null
                || !flow.vessel().equals(topUp.vessel()) && !flow.vessel().equals(topUp.source())) {
            return "";
        }
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        return topUp.endedAt() == null
                ? ", of " + units.volume(topUp.plannedL()) + " declared"
                : ", when the top-up was ended";
    }

    private static Passage past(String vessel, Moved moved, Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        boolean reserve =
                frame.snapshot().site().vessels(VesselRole.RESERVE).stream().anyMatch(v -> v.id().equals(vessel));
        Instant until = moved.until();
        String time = clock(moved.since(), frame) + (until == null ? " on" : " to " + clock(until, frame));
        String way = moved.litres() < 0 ? " left it from " : reserve ? " filled in from " : " came in from ";
        return Passage.plain("Moved", units.spread(moved.spread()) + way + time + ", not declared");
    }

    private static String clock(Instant at, Frame frame) {
        ZoneId zone = frame.snapshot().site().timeZone();
        return Words.clock(at, frame.at(), zone);
    }
}
