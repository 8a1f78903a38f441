package bywash.tui.screen;

import bywash.rules.event.OperatorEntry;

/** What a key press leads to outside the screen. */
public sealed interface Effect {
    /** Nothing. */
    record None() implements Effect {}

    /** The picture may differ. */
    record Redraw() implements Effect {}

    /** The grower entered something; it becomes an event. */
    record Enter(OperatorEntry entry) implements Effect {}

    /** The grower leaves, or is gone. */
    record Quit() implements Effect {}
}
