package bywash.tui.screen;

import bywash.tui.view.Frame;
import java.util.List;

/**
 * One thing that keys do on a page.
 *
 * @param keys any of these does it; the first stands in the bottom line
 * @param word for the bottom line; empty keeps it out of there
 * @param sentence for the help
 * @param deed what it does, given the latest frame
 */
public record Binding(List<KeyPress> keys, String word, String sentence, Deed deed) {

    /** What a key does. */
    @FunctionalInterface
    public interface Deed {
        Effect on(Frame frame);
    }

    public Binding {
        keys = List.copyOf(keys);
    }

    public static Binding of(char key, String word, String sentence, Deed deed) {
        return new Binding(List.of(KeyPress.of(key)), word, sentence, deed);
    }

    public static Binding of(KeyPress.Kind key, String word, String sentence, Deed deed) {
        return new Binding(List.of(KeyPress.of(key)), word, sentence, deed);
    }

    /** A key that only moves the place on the page. */
    public static Binding moves(KeyPress.Kind key, String word, String sentence, Runnable move) {
        return of(key, word, sentence, frame -> {
            move.run();
            return new Effect.Redraw();
        });
    }

    /** The same by a letter. */
    public static Binding moves(KeyPress key, String word, String sentence, Runnable move) {
        return moves(key.kind(), word, sentence, move).on(key);
    }

    private Binding on(KeyPress key) {
        return new Binding(List.of(key), word, sentence, deed);
    }

    /** The same with further keys. */
    public Binding or(KeyPress... more) {
        List<KeyPress> all = new java.util.ArrayList<>(keys);
        all.addAll(List.of(more));
        return new Binding(all, word, sentence, deed);
    }

    boolean has(KeyPress key) {
        return keys.contains(key.lower());
    }

    /** Such as {@code Down}, for the bottom line with its word. */
    String shown() {
        return keys.get(0).label() + " " + word;
    }

    /** All its keys, for the help. */
    String labels() {
        return String.join(", ", keys.stream().map(KeyPress::label).distinct().toList());
    }
}
