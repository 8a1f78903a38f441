package bywash.tui.screen;

import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Playback;
import java.util.List;

/** What a key press leads to. */
public sealed interface Effect {
    /** The picture may differ, nothing else. */
    record Redraw() implements Effect {}

    /** Words for the bottom line until the next key. */
    record Say(String words) implements Effect {}

    /** Goes to another page; back comes here again. */
    record Open(Class<? extends Page> page) implements Effect {}

    /** Goes back to the page one came from. */
    record Back() implements Effect {}

    /**
     * The grower entered something; each becomes an event.
     *
     * @param words what was done, for the bottom line
     * @param leaves whether the page is done with
     */
    record Enter(List<OperatorEntry> entries, String words, boolean leaves) implements Effect {
        public Enter {
            entries = List.copyOf(entries);
        }
    }

    /** A replay is to do something. */
    record Play(Playback.Command command) implements Effect {}

    /** The grower leaves, or is gone. */
    record Quit() implements Effect {}

    /** One entry from a form that is then done with. */
    static Effect entered(OperatorEntry entry, String words) {
        return new Enter(List.of(entry), words, true);
    }
}
