package bywash.rules.detect;

/** What is known of a pump that moves this vessel's water. */
enum Pump {
    NONE,
    TOLD,
    UNTOLD
}
