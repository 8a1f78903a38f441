package bywash.tui.screen;

import bywash.tui.view.Frame;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page. It keeps the grower's place on it (what is chosen, how far it is scrolled), draws its body between the top
 * and the bottom line, and names its keys with what each does. The keys of all pages ({@link Pages}) come on top.
 */
public interface Page {
    /** Its name, unique; stands in the list of pages and in the help. */
    String title();

    /** What it is for, one line. */
    String purpose();

    /** The letter that opens it from any page; null where it is opened in another way. */
    @Nullable
    Character letter();

    /** Its word in the bottom line of every page; empty keeps it out, and in the list of pages only. */
    default String barWord() {
        return "";
    }

    /** Its own keys as they are now, most used first; the bottom line and the help are made from them. */
    List<Binding> keys();

    /** Draws the body; any size from 1x1 up. */
    void draw(Picture body, Frame frame);

    /** Told each time the page is opened, not when one comes back to it. */
    default void opened(Frame frame) {}

    /** Why it cannot be opened now, in words; empty when it can. */
    default String shut(Frame frame) {
        return "";
    }

    /** Whether letters are text now: the letters of all pages then rest, and {@link #type} gets them. */
    default boolean typing() {
        return false;
    }

    /** A character that is no key of this page. */
    default void type(char character) {}
}
