package bywash.tui.view;

import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.TopUp;
import bywash.rules.engine.VesselStatus;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * The running top-up, or the last one ended.
 *
 * @param volumeShare of the planned volume, 0 to 1; NaN where none was declared
 * @param timeShare of the planned time likewise
 * @param volume how much has entered and how much is to come
 * @param time how long it runs and how long is left
 * @param shut whether the line is shut, in words; while it runs only where nothing comes
 */
public record TopUpProgress(
        boolean running, String what, double volumeShare, double timeShare, String volume, String time, String shut) {

    private static final Duration LATELY = Duration.ofHours(1);

    public static TopUpProgress from(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        if (topUp == null) {
            return new TopUpProgress(false, "No top-up was declared.", Double.NaN, Double.NaN, "", "", "");
        }
        ZoneId zone = frame.snapshot().site().timeZone();
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        Instant ended = topUp.endedAt();
        Instant until = ended == null ? frame.at() : ended;
        double ran = Duration.between(topUp.startedAt(), until).toMillis();
        String what = "Top-up into " + topUp.vessel() + " from " + topUp.source() + ", begun "
                + Words.clock(topUp.startedAt(), frame.at(), zone)
                + (ended == null ? "." : ", ended " + Words.clock(ended, frame.at(), zone) + ".");
        return new TopUpProgress(
                ended == null,
                what,
                share(topUp.enteredL() / topUp.plannedL()),
                share(ran / topUp.plannedTime().toMillis()),
                volume(topUp, units, ended == null),
                ended == null ? timeLeft(topUp, frame.at()) : "ran " + Words.span(topUp.startedAt(), ended),
                topUp.checking() ? checked(topUp, frame) : UsWords.water(topUp.confirmation(), frame));
    }

    /** What is being checked after an end and until when, or that it could not be; empty where all is known or nothing was ended lately. */
    static String open(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        Instant ended = topUp == null ? null : topUp.endedAt();
        if (topUp == null || ended == null || frame.at().isAfter(ended.plus(LATELY))) {
            return "";
        }
        String line = "whether the line into " + topUp.vessel() + " is shut";
        if (topUp.checking()) {
            return line + " and nothing else runs in is watched " + until(ended, frame) + "; look at the hose end";
        }
        return topUp.unsure() ? line + " could not be confirmed: look at it" : "";
    }

    private static String checked(TopUp topUp, Frame frame) {
        Instant ended = topUp.endedAt();
        return ended == null
                ? ""
                : "Not yet confirmed shut: watched " + until(ended, frame) + " for water that still runs into "
                        + topUp.vessel() + ", by its line or from elsewhere";
    }

    private static String until(Instant ended, Frame frame) {
        String soonest = soonest(ended, frame);
        String latest = clock(ended.plus(TopUp.GIVEN_UP_AFTER), frame) + " at the latest";
        return soonest.contains("about") ? soonest + ", " + latest : "until " + latest;
    }

    /** Until when it takes where the level is calm; after that, until when it is tried. */
    private static String soonest(Instant ended, Frame frame) {
        Instant soonest = ended.plus(TopUp.CHECKED_FOR);
        return soonest.isAfter(frame.at())
                ? "until about " + clock(soonest, frame)
                : "until " + clock(ended.plus(TopUp.GIVEN_UP_AFTER), frame);
    }

    private static String clock(Instant at, Frame frame) {
        return Words.clock(at, frame.at(), frame.snapshot().site().timeZone());
    }

    /** Whether water comes by its line that should not: after its end, or beyond its volume. */
    static boolean runsOn(Frame frame) {
        return frame.snapshot().vessels().stream()
                .map(VesselStatus::flow)
                .anyMatch(flow -> flow != null && flow.verdict() == Verdict.LINE_NOT_SHUT);
    }

    /** What the balance says of the water of a top-up. */
    static String balance(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        if (runsOn(frame)) {
            return "the line is not shut; what is left over is judged once it is";
        }
        return topUp != null && topUp.endedAt() != null
                ? "the line is being checked; what is left over is judged then"
                : "goes as declared; what is left over is judged once it has ended";
    }

    /** The lines of a page on it. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(what);
        if (!shut.isEmpty()) {
            lines.add(shut + ".");
        }
        return lines;
    }

    /** One line for the overview; empty when there was none. */
    static String words(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        if (topUp == null) {
            return "";
        }
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        Instant ended = topUp.endedAt();
        if (ended == null) {
            String how = topUp.confirmation().isEmpty()
                    ? units.volume(topUp.enteredL()) + " +/- " + units.volume(2 * topUp.enteredSeL()) + " of "
                            + units.volume(topUp.plannedL()) + "; " + timeLeft(topUp, frame.at())
                    : UsWords.water(topUp.confirmation(), frame) + ".";
            if (topUp.confirmation().isEmpty() && topUp.enteredL() > topUp.plannedL()) {
                return "TOP-UP OVER, shut the valve: " + how;
            }
            return "TOP-UP into " + topUp.vessel() + " from " + topUp.source() + ": " + how;
        }
        String when = Words.clock(ended, frame.at(), frame.snapshot().site().timeZone());
        String line = topUp.checking()
                ? "Line not yet confirmed shut, watched " + soonest(ended, frame)
                : topUp.line(); // what came in stands on the page of the top-up
        return "Top-up ended " + when + ". " + UsWords.water(line, frame) + ".";
    }

    private static String volume(TopUp topUp, DisplayUnits units, boolean running) {
        double toCome = topUp.plannedL() - topUp.enteredL();
        boolean asPlanned = Math.abs(toCome) <= 2 * topUp.enteredSeL();
        String left = asPlanned && !running
                ? "as planned"
                : toCome >= 0
                        ? units.volume(toCome) + (running ? " to go" : " short")
                        : "OVER by " + units.volume(-toCome) + (running ? ", shut the valve" : "");
        return units.spread(topUp.entered()) + " of " + units.volume(topUp.plannedL()) + ", " + left;
    }

    private static String timeLeft(TopUp topUp, Instant now) {
        Instant end = topUp.startedAt().plus(topUp.plannedTime());
        return end.isAfter(now)
                ? Words.span(now, end) + " of " + Words.span(topUp.plannedTime()) + " left"
                : "OVERDUE by " + Words.span(end, now);
    }

    private static double share(double value) {
        return Math.max(0, Math.min(1, value));
    }
}
