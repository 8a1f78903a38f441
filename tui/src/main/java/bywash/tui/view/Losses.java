package bywash.tui.view;

import java.util.ArrayList;
import java.util.List;

/**
 * Messages that did not reach the rules.
 *
 * @param dropped the hand-over was full
 * @param refused could not be read
 * @param late came after later ones, too late to be put in order
 */
public record Losses(long dropped, long refused, long late) {
    public static final Losses NONE = new Losses(0, 0, 0);

    /** In words; what did not happen is left out. */
    public String words() {
        List<String> parts = new ArrayList<>();
        add(parts, "dropped", dropped);
        add(parts, "refused", refused);
        add(parts, "late", late);
        return parts.isEmpty() ? "none lost" : String.join(", ", parts);
    }

    private static void add(List<String> parts, String word, long count) {
        if (count > 0) {
            parts.add(word + " " + count);
        }
    }
}
