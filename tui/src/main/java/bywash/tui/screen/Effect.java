package bywash.tui.screen;

import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Playback;
import java.util.List;

/** What a key press leads to. */
public sealed interface Effect {
    /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
    enum Kind {
        REDRAW,
        SAY,
        OPEN,
        BACK,
        ENTER,
        PLAY,
        QUIT
    }

    Kind kind();

    /** The picture may differ, nothing else. */
    record Redraw() implements Effect {
        @Override
        public Kind kind() {
            return Kind.REDRAW;
        }
    }

    /** Words for the bottom line until the next key. */
    record Say(String words) implements Effect {
        @Override
        public Kind kind() {
            return Kind.SAY;
        }
    }

    /** Goes to another page; back comes here again. */
    record Open(Class<? extends Page> page) implements Effect {
        @Override
        public Kind kind() {
            return Kind.OPEN;
        }
    }

    /** Goes back to the page one came from. */
    record Back() implements Effect {
        @Override
        public Kind kind() {
            return Kind.BACK;
        }
    }

    /**
     * The grower entered something; each becomes an event.
     *
     * @param words what was done, for the bottom line
     * @param leaves whether the page is done with
     */
    record Enter(List<OperatorEntry> entries, String words, boolean leaves) implements Effect {
        @Override
        public Kind kind() {
            return Kind.ENTER;
        }

        public Enter {
            entries = List.copyOf(entries);
        }
    }

    /** A replay is to do something. */
    record Play(Playback.Command command) implements Effect {
        @Override
        public Kind kind() {
            return Kind.PLAY;
        }
    }

    /** The grower leaves, or is gone. */
    record Quit() implements Effect {
        @Override
        public Kind kind() {
            return Kind.QUIT;
        }
    }

    /** One entry from a form that is then done with. */
    static Effect entered(OperatorEntry entry, String words) {
        return new Enter(List.of(entry), words, true);
    }
}
