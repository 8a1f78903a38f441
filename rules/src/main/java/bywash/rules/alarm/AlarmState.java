package bywash.rules.alarm;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Alarm states of ANSI/ISA-18.2-2016 / IEC 62682 (from memory: the standard's table was not at hand).
 *
 * <pre>
 *              raise                acknowledge
 *   NORMAL ---------> UNACKNOWLEDGED ---------> ACKNOWLEDGED
 *     ^                    | ^                       |
 *     | acknowledge  clear | | raise                 | clear
 *     +------- RETURNED_UNACKNOWLEDGED               +----> NORMAL (latched: as unacknowledged)
 *   UNACKNOWLEDGED --announce again, after long--> UNACKNOWLEDGED
 *   any --shelve--> SHELVED --unshelve or time--> NORMAL or UNACKNOWLEDGED
 *   any --suppress--> SUPPRESSED (by design), --remove--> OUT_OF_SERVICE; both return like SHELVED
 * </pre>
 */
public enum AlarmState {
    NORMAL,
    UNACKNOWLEDGED,
    ACKNOWLEDGED,
    RETURNED_UNACKNOWLEDGED,
    SHELVED,
    SUPPRESSED,
    OUT_OF_SERVICE;

    /** The state of a word; empty where there is none. */
    public static Optional<AlarmState> of(String word) {
        return Arrays.stream(values())
                .filter(state -> state.word().equals(word))
                .findFirst();
    }

    /** Whether the condition of an alarm in this state may still hold, be it shown or set aside. */
    public boolean holds() {
        return switch (this) {
            case UNACKNOWLEDGED, ACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> true;
            case RETURNED_UNACKNOWLEDGED, NORMAL -> false;
        };
    }

    /** Whether an alarm in this state is out of the grower's way: on purpose, for a time, or by design. */
    public boolean setAside() {
        return switch (this) {
            case SHELVED, SUPPRESSED, OUT_OF_SERVICE -> true;
            case NORMAL, UNACKNOWLEDGED, ACKNOWLEDGED, RETURNED_UNACKNOWLEDGED -> false;
        };
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
