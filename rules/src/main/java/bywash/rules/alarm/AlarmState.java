package bywash.rules.alarm;

import java.util.Locale;

/**
 * Alarm states of ANSI/ISA-18.2-2016 / IEC 62682 (from memory: the standard's table was not at hand).
 *
 * <pre>
 *              raise                acknowledge
 *   NORMAL ---------> UNACKNOWLEDGED ---------> ACKNOWLEDGED
 *     ^                    | ^                       |
 *     | acknowledge  clear | | raise                 | clear
 *     +------- RETURNED_UNACKNOWLEDGED               +----> NORMAL
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

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
