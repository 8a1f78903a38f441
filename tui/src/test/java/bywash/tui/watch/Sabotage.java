package bywash.tui.watch;

/** Faults of ours, made on purpose to see that the simulation finds them. */
enum Sabotage {
    NONE(""),
    FORGET_AN_ENTRY("no shown entry lost"),
    FORGET_THE_ALARMS("no alarm forgotten"),
    FORGET_A_LINE("no shown alarm line lost"),
    SHOW_BEFORE_IT_IS_KEPT("no shown"),
    OLD_VALUES_AS_FRESH("no stale value passes for good"),
    NEVER_TELL_OF_A_LOST_FEED("no lost feed passes for up"),
    LOSE_MESSAGES("a replay of the journal gives the same alarm lines"),
    HOARD("memory is bounded"),
    SAY_NOTHING_OF_A_FULL_DISK("a journal at fault is said"),
    FORGET_WHAT_WAITS("no shown");

    /** How the complaint begins. */
    final String complaint;

    Sabotage(String complaint) {
        this.complaint = complaint;
    }
}
