package bywash.tui.view;

import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.Priority;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.tui.view.EventLog.Event;
import java.time.Instant;
import java.util.List;

/**
 * One line of the event log.
 *
 * @param mark urgency without colour
 * @param entry whether the grower entered it
 * @param raised whether an alarm was raised
 */
public record LogLine(Instant at, String when, String mark, String text, Tone tone, boolean entry, boolean raised) {
    /** Columns of the mark. */
    private static final int MARK = 3;

    /** The column in which the texts of these begin, so that they stand one under another. */
    public static int indent(List<LogLine> lines) {
        return MARK
                + 1
                + lines.stream().mapToInt(line -> line.when().length()).max().orElse(0);
    }

    public static LogLine from(Event event, Frame frame) {
        String when =
                Words.clock(event.at(), frame.at(), frame.snapshot().site().timeZone());
        return switch (event.kind()) {
            case ALARM -> alarm(((Event.Alarm) event).transition(), when, frame);
            case ENTRY -> {
                String text = entered(((Event.Entry) event).entry(), frame);
                yield new LogLine(event.at(), when, "", text, Tone.PLAIN, true, false);
            }
            case UNWATCHED -> unwatched((Event.Unwatched) event, when, frame);
        };
    }

    private static LogLine alarm(AlarmTransition t, String when, Frame frame) {
        Tone tone = tone(t);
        String mark = tone == Tone.CRITICAL ? "!!" : tone == Tone.WARNING ? "!" : "";
        boolean raised = t.state() == AlarmState.UNACKNOWLEDGED && !t.again();
        String message = UsWords.water(t.message(), frame);
        String what = raised ? "RAISED. " + message : t.again() ? "CALLS AGAIN. " + message : words(t.state());
        String text = t.kind().word() + " " + t.subject() + ": " + what;
        return new LogLine(t.at(), when, mark, text, tone, false, raised);
    }

    private static String entered(OperatorEntry entry, Frame frame) {
        if (entry instanceof Withdraw w) {
            String when =
                    Words.clock(w.entered(), frame.at(), frame.snapshot().site().timeZone());
            return "taken back: " + w.of() + " of " + when + (w.why().isEmpty() ? "" : ", " + w.why());
        }
        return EntryWords.of(entry, new DisplayUnits(frame.snapshot().site().units()));
    }

    private static LogLine unwatched(Event.Unwatched event, String when, Frame frame) {
        String since =
                Words.clock(event.since(), event.at(), frame.snapshot().site().timeZone());
        String text =
                "watch started; nobody watched since " + since + " (" + Words.span(event.since(), event.at()) + ")";
        return new LogLine(event.at(), when, "!", text, Tone.WARNING, false, false);
    }

    /** The newest, newest first. */
    static List<LogLine> newest(Frame frame, int most) {
        return frame.log().newestFirst().stream()
                .limit(most)
                .map(e -> from(e, frame))
                .toList();
    }

    private static Tone tone(AlarmTransition t) {
        if (t.state() != AlarmState.UNACKNOWLEDGED) {
            return Tone.PLAIN;
        }
        return t.priority() == Priority.CRITICAL ? Tone.CRITICAL : Tone.WARNING;
    }

    private static String words(AlarmState state) {
        return switch (state) {
            case UNACKNOWLEDGED -> "raised";
            case ACKNOWLEDGED -> "acknowledged";
            case RETURNED_UNACKNOWLEDGED -> "over, not yet acknowledged";
            case NORMAL -> "back to normal";
            case SHELVED -> "shelved";
            case SUPPRESSED -> "suppressed by design";
            case OUT_OF_SERVICE -> "out of service";
        };
    }
}
