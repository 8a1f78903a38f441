package bywash.rules.alarm;

import java.util.Optional;

/**
 * The legal moves between alarm states, after ANSI/ISA-18.2-2016 and IEC 62682 (from memory). A move that is not
 * legal gives empty: the input changes nothing.
 */
public final class AlarmLife {
    private AlarmLife() {}

    /**
     * The state after an input.
     *
     * @param conditionHolds whether the alarm's condition is true now; decides where an alarm goes that was hidden
     * @param latched whether an acknowledged alarm stays when its condition goes
     */
    public static Optional<AlarmState> next(
            AlarmState from, AlarmInput input, boolean conditionHolds, boolean latched) {
        return switch (input) {
            case RAISE -> raise(from);
            case CLEAR -> clear(from, latched);
            case ACKNOWLEDGE -> acknowledge(from);
            case ANNOUNCE_AGAIN ->
                from == AlarmState.UNACKNOWLEDGED ? Optional.of(AlarmState.UNACKNOWLEDGED) : Optional.empty();
            case SHELVE -> hide(from, AlarmState.SHELVED);
            case SUPPRESS -> hide(from, AlarmState.SUPPRESSED);
            case REMOVE_FROM_SERVICE -> hide(from, AlarmState.OUT_OF_SERVICE);
            case UNSHELVE -> show(from, AlarmState.SHELVED, conditionHolds);
            case RELEASE -> show(from, AlarmState.SUPPRESSED, conditionHolds);
            case RETURN_TO_SERVICE -> show(from, AlarmState.OUT_OF_SERVICE, conditionHolds);
        };
    }

    private static Optional<AlarmState> raise(AlarmState from) {
        return switch (from) {
            case NORMAL, RETURNED_UNACKNOWLEDGED -> Optional.of(AlarmState.UNACKNOWLEDGED);
            case UNACKNOWLEDGED, ACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> Optional.empty();
        };
    }

    private static Optional<AlarmState> clear(AlarmState from, boolean latched) {
        return switch (from) {
            case UNACKNOWLEDGED -> Optional.of(AlarmState.RETURNED_UNACKNOWLEDGED);
            case ACKNOWLEDGED -> Optional.of(latched ? AlarmState.RETURNED_UNACKNOWLEDGED : AlarmState.NORMAL);
            case NORMAL, RETURNED_UNACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> Optional.empty();
        };
    }

    private static Optional<AlarmState> acknowledge(AlarmState from) {
        return switch (from) {
            case UNACKNOWLEDGED -> Optional.of(AlarmState.ACKNOWLEDGED);
            case RETURNED_UNACKNOWLEDGED -> Optional.of(AlarmState.NORMAL);
            case NORMAL, ACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> Optional.empty();
        };
    }

    private static Optional<AlarmState> hide(AlarmState from, AlarmState to) {
        return switch (from) {
            case NORMAL, UNACKNOWLEDGED, ACKNOWLEDGED, RETURNED_UNACKNOWLEDGED -> Optional.of(to);
            case SHELVED, SUPPRESSED, OUT_OF_SERVICE -> Optional.empty();
        };
    }

    private static Optional<AlarmState> show(AlarmState from, AlarmState hidden, boolean conditionHolds) {
        if (from != hidden) {
            return Optional.empty();
        }
        return Optional.of(conditionHolds ? AlarmState.UNACKNOWLEDGED : AlarmState.NORMAL);
    }
}
