package bywash.rules.alarm;

/** What can move an alarm from one state to another. */
public enum AlarmInput {
    /** The condition has held for the on-delay. */
    RAISE,
    /** The condition has been gone for the off-delay. */
    CLEAR,
    ACKNOWLEDGE,
    /** It has stayed unacknowledged for long. */
    ANNOUNCE_AGAIN,
    SHELVE,
    UNSHELVE,
    SUPPRESS,
    RELEASE,
    REMOVE_FROM_SERVICE,
    RETURN_TO_SERVICE
}
