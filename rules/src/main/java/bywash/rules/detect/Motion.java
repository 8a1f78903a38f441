package bywash.rules.detect;

/** What the volume of one vessel alone says. */
enum Motion {
    LEARNING,
    STEADY,
    IN,
    OUT,
    DRAINING_BACK
}
