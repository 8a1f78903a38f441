package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.Frame;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * One field of a form.
 *
 * @param choices for a choice, the words to choose from; else empty
 * @param unit for a number or a list of numbers, its unit
 * @param words how a choice is said; what is chosen stays its id
 * @param hint what is said beside it
 */
public record Field(
        String label, Kind kind, List<String> choices, String unit, UnaryOperator<String> words, Hint hint) {

    /** What is said beside a field as the form stands, such as the last value; empty for nothing. */
    public interface Hint {
        String of(Frame frame, Filled filled);
    }

    private static final int MOST_LIST = 1000;

    /** What goes into it. */
    public enum Kind {
        CHOICE,
        NUMBER,
        /** A number that may be below zero. */
        SIGNED,
        /** Numbers with commas or blanks between. */
        LIST,
        TEXT
    }

    public Field {
        choices = List.copyOf(choices);
    }

    private Field(String label, Kind kind, List<String> choices, String unit) {
        this(label, kind, choices, unit, choice -> choice, (frame, filled) -> "");
    }

    /** The same with its choices said in words. */
    public Field said(UnaryOperator<String> newWords) {
        return new Field(label, kind, choices, unit, newWords, hint);
    }

    /** The same with something said beside it. */
    public Field beside(Hint newHint) {
        return new Field(label, kind, choices, unit, words, newHint);
    }

    public static Field choice(String label, List<String> choices) {
        return new Field(label, Kind.CHOICE, choices, "");
    }

    public static Field number(String label, String unit) {
        return new Field(label, Kind.NUMBER, List.of(), unit);
    }

    public static Field signed(String label, String unit) {
        return new Field(label, Kind.SIGNED, List.of(), unit);
    }

    public static Field list(String label, String unit) {
        return new Field(label, Kind.LIST, List.of(), unit);
    }

    public static Field text(String label) {
        return new Field(label, Kind.TEXT, List.of(), "");
    }

    /** What stands in it at first. */
    String start() {
        return choices.isEmpty() ? "" : choices.get(0);
    }

    /** The text after a further character; unchanged where that does not belong in it. */
    String type(String text, char c) {
        boolean fits = switch (kind) {
            case CHOICE -> false;
            case NUMBER -> text.length() < 8 && numeric(c);
            case SIGNED -> text.length() < 8 && (numeric(c) || c == '-' && text.isEmpty());
            case LIST -> text.length() < MOST_LIST && (numeric(c) || c == ',' || c == ' ');
            case TEXT -> text.length() < 200 && c >= ' ';
        };
        return fits ? text + c : text;
    }

    private static boolean numeric(char c) {
        return c >= '0' && c <= '9' || c == '.';
    }

    /** The choice so many further; numbers and texts stay. */
    String choose(String text, int by) {
        return choices.isEmpty() ? text : choices.get(Math.floorMod(choices.indexOf(text) + by, choices.size()));
    }
}
