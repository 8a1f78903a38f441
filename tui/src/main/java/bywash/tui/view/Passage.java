package bywash.tui.view;

/**
 * One passage of a page of words.
 *
 * @param label stands before it; empty for none
 * @param tone how abnormal; a mark in the text says the same
 */
public record Passage(String label, String text, Tone tone) {
    static Passage plain(String label, String text) {
        return new Passage(label, text, Tone.PLAIN);
    }
}
