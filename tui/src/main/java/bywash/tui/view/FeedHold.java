package bywash.tui.view;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.recovery.FeedStage;
import bywash.rules.recovery.RecoveryView;
import bywash.rules.text.Sentence;

/** Why the fish get less than their ration now: an alarm that stands, or the way back after an incident. */
final class FeedHold {
    private FeedHold() {}

    /** One sentence; empty where nothing speaks against the ration. */
    static String words(Frame frame) {
        for (AlarmView alarm : frame.snapshot().alarms()) {
            if (AlarmLine.active(alarm) && holds(alarm.kind())) {
                return "Hold the feed while " + alarm.kind().word() + " " + alarm.subject() + " stands.";
            }
        }
        RecoveryView recovery = frame.snapshot().care().recovery();
        if (recovery == null || recovery.feed() == FeedStage.FULL) {
            return "";
        }
        return recovery.feed() == FeedStage.HOLD
                ? "Hold the feed: the way back after the incident waits for tests (page w)."
                : Sentence.of(
                        "Feed %.0f %% of this: the way back after the incident (page w).",
                        100 * recovery.feed().share());
    }

    /** Whether what to do about it says to stop or to hold the feed. */
    private static boolean holds(AlarmKind kind) {
        return switch (kind) {
            case LOW_OXYGEN,
                    AMMONIA_TOXIC,
                    NITRITE_HIGH,
                    BIOFILTER_SETBACK,
                    TEMPERATURE_LOW,
                    TEMPERATURE_HIGH,
                    TEMPERATURE_SWING -> true;
            case UNPLANNED_INFLOW,
                    UNPLANNED_LOSS,
                    OVERFLOW_NEAR,
                    LINE_NOT_SHUT,
                    UNSAFE_RELEASE,
                    CHLORINE_RISK,
                    PUMP_STOPPED,
                    PH_LOW,
                    PH_HIGH,
                    ORP_LOW,
                    ORP_RISE,
                    FEED_LOST,
                    PROBE_SILENT,
                    PROBE_STUCK,
                    PROBE_IMPLAUSIBLE -> false;
        };
    }
}
