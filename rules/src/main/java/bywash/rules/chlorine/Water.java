package bywash.rules.chlorine;

/** What brought a residual that is held possible. */
enum Water {
    /** What the balance knows, water of unknown source being mains water. */
    MAINS,
    /** The same, that water being something else. */
    OTHER,
    /** Mains water that the balance did not see. */
    UNSEEN
}
