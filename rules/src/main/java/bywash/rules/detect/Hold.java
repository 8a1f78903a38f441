package bywash.rules.detect;

/**
 * What can fall back into a vessel.
 *
 * @param beds siphon beds that drain into it
 * @param bedsL the most they can hold, L; 0 where the vessel has no siphons
 * @param pipesL the most that drains back when the pump stops, beds aside, L
 */
record Hold(int beds, double bedsL, double pipesL) {
    static final Hold NONE = new Hold(0, 0, 0);
}
