package bywash.tui.view;

import bywash.rules.detect.TopUp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The running top-up, or the last one ended, in words. */
public record TopUpProgress(boolean running, List<String> lines) {
    public TopUpProgress {
        lines = List.copyOf(lines);
    }

    public static TopUpProgress from(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        List<String> lines = new ArrayList<>();
        if (topUp == null) {
            lines.add("No top-up was declared.");
            return new TopUpProgress(false, lines);
        }
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        lines.add("Top-up into " + topUp.vessel() + " from " + topUp.source() + ", begun "
                + Words.clock(
                        topUp.startedAt(), frame.at(), frame.snapshot().site().timeZone()) + ".");
        lines.add("Entered so far: about " + units.volume(topUp.enteredL()) + " of " + units.volume(topUp.plannedL())
                + ".");
        lines.add(topUp.endedAt() == null ? "Time: " + timeLeft(topUp, frame.at()) + "." : "It was ended.");
        if (!topUp.confirmation().isEmpty()) {
            lines.add("Line: " + topUp.confirmation());
        }
        return new TopUpProgress(topUp.endedAt() == null, lines);
    }

    /** One line for the overview. */
    static String words(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        if (topUp == null) {
            return "";
        }
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        Instant ended = topUp.endedAt();
        if (ended == null) {
            return "top-up into " + topUp.vessel() + " from " + topUp.source() + ": " + units.volume(topUp.enteredL())
                    + " of " + units.volume(topUp.plannedL()) + ", " + timeLeft(topUp, frame.at());
        }
        String when = Words.clock(ended, frame.at(), frame.snapshot().site().timeZone());
        String line = topUp.confirmation().isEmpty() ? "line not yet confirmed shut" : topUp.confirmation();
        return "top-up ended " + when + ": " + line;
    }

    private static String timeLeft(TopUp topUp, Instant now) {
        Instant end = topUp.startedAt().plus(topUp.plannedTime());
        return end.isAfter(now) ? Words.span(now, end) + " left" : "OVERDUE by " + Words.span(end, now);
    }
}
