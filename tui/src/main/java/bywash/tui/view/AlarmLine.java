package bywash.tui.view;

import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmView;
import bywash.rules.alarm.Priority;
import java.time.Duration;
import java.util.Objects;

/**
 * One alarm in a list.
 *
 * @param mark urgency without colour: {@code !!}, {@code !} or blank
 * @param state one short word
 * @param follows whether it follows from another alarm of its incident
 */
public record AlarmLine(
        AlarmKey key,
        String mark,
        String name,
        String state,
        String since,
        String message,
        Tone tone,
        boolean fresh,
        boolean follows) {
    private static final Duration A_WHILE = Duration.ofMinutes(1);

    static AlarmLine from(AlarmView alarm, Frame frame, boolean follows) {
        return new AlarmLine(
                AlarmKey.of(alarm),
                mark(alarm),
                alarm.kind().word() + " " + alarm.subject(),
                state(alarm.state()),
                Words.clock(alarm.since(), frame.at(), frame.snapshot().site().timeZone()),
                message(alarm, frame),
                tone(alarm),
                fresh(alarm),
                follows);
    }

    /** What is wrong; what no longer holds, but is not yet over, is told as what it was. */
    static String message(AlarmView alarm, Frame frame) {
        String words = UsWords.water(alarm.message(), frame);
        return eased(alarm, frame)
                ? "Not so since "
                        + Words.clock(
                                Objects.requireNonNull(alarm.easedAt()),
                                frame.at(),
                                frame.snapshot().site().timeZone())
                        + ", over if that lasts: " + words
                : words;
    }

    /** Whether its condition has not held for a while; swings about a limit are not told one by one. */
    static boolean eased(AlarmView alarm, Frame frame) {
        return alarm.easedAt() != null && !alarm.easedAt().isAfter(frame.at().minus(A_WHILE));
    }

    /** Whether the grower has still to acknowledge it. */
    public static boolean fresh(AlarmView alarm) {
        return alarm.state() == AlarmState.UNACKNOWLEDGED || alarm.state() == AlarmState.RETURNED_UNACKNOWLEDGED;
    }

    /** Whether its condition stands and nobody set it aside. */
    static boolean active(AlarmView alarm) {
        return alarm.state() == AlarmState.UNACKNOWLEDGED || alarm.state() == AlarmState.ACKNOWLEDGED;
    }

    static Tone tone(AlarmView alarm) {
        if (!active(alarm)) {
            return Tone.PLAIN;
        }
        return alarm.priority() == Priority.CRITICAL ? Tone.CRITICAL : Tone.WARNING;
    }

    private static String mark(AlarmView alarm) {
        return switch (tone(alarm)) {
            case CRITICAL -> "!!";
            case WARNING -> "!";
            case PLAIN -> "";
        };
    }

    private static String state(AlarmState state) {
        return switch (state) {
            case UNACKNOWLEDGED -> "new";
            case ACKNOWLEDGED -> "acked";
            case RETURNED_UNACKNOWLEDGED -> "over";
            case NORMAL -> "-";
            case SHELVED -> "shelf";
            case SUPPRESSED -> "quiet";
            case OUT_OF_SERVICE -> "out";
        };
    }
}
