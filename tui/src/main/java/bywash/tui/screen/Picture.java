package bywash.tui.screen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A grid of styled cells, one terminal screen. The only way for text to reach the terminal: control characters, marks
 * that join or turn text, and characters wider than a cell become a question mark here.
 */
public final class Picture {
    private static final char UNSHOWABLE = '?';

    private final int width;
    private final int height;
    private final boolean unicode;
    private final char[] characters;
    private final Style[] styles;

    public Picture(int width, int height, boolean unicode) {
        this.width = width;
        this.height = height;
        this.unicode = unicode;
        characters = new char[width * height];
        styles = new Style[width * height];
        Arrays.fill(characters, ' ');
        Arrays.fill(styles, Style.PLAIN);
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public Glyphs glyphs() {
        return Glyphs.of(unicode);
    }

    /** Writes text from a cell rightwards; what falls outside is left out. Returns the column after the text. */
    public int put(int row, int column, String text, Style style) {
        for (int i = 0; i < text.length(); i++) {
            int x = column + i;
            if (row >= 0 && row < height && x >= 0 && x < width) {
                characters[row * width + x] = showable(text.charAt(i));
                styles[row * width + x] = style;
            }
        }
        return column + text.length();
    }

    /** Writes text that must keep within a width; what is too long ends in a tilde. */
    public int put(int row, int column, int room, String text, Style style) {
        String kept = text.length() <= room ? text : room < 1 ? "" : text.substring(0, room - 1) + "~";
        return put(row, column, kept, style);
    }

    /** Writes text so that it ends before a column. */
    public void putBefore(int row, int end, String text, Style style) {
        put(row, end - text.length(), text, style);
    }

    /** A heading with a line to the end of its room. */
    public void heading(int row, int column, int room, String text) {
        int after = put(row, column, room, text + " ", Style.STRONG);
        put(row, after, String.valueOf(glyphs().line()).repeat(Math.max(0, column + room - after)), Style.PLAIN);
    }

    /** Lays another picture over this one, its corner at a cell. */
    void lay(int row, int column, Picture other) {
        for (int r = 0; r < Math.min(other.height, height - row); r++) {
            int from = (row + r) * width + column;
            int cells = Math.min(other.width, width - column);
            System.arraycopy(other.characters, r * other.width, characters, from, cells);
            System.arraycopy(other.styles, r * other.width, styles, from, cells);
        }
    }

    char character(int row, int column) {
        return characters[row * width + column];
    }

    Style style(int row, int column) {
        return styles[row * width + column];
    }

    private char showable(char c) {
        if (c < 0x7f) {
            return c < ' ' ? UNSHOWABLE : c;
        }
        return unicode && narrow(c) ? c : UNSHOWABLE;
    }

    private static boolean narrow(char c) {
        boolean wide = (c >= 0x1100 && c <= 0x115f) || c >= 0x2e80;
        return !wide
                && switch (Character.getType(c)) {
                    case Character.CONTROL,
                            Character.FORMAT,
                            Character.SURROGATE,
                            Character.PRIVATE_USE,
                            Character.UNASSIGNED,
                            Character.LINE_SEPARATOR,
                            Character.PARAGRAPH_SEPARATOR,
                            Character.NON_SPACING_MARK,
                            Character.ENCLOSING_MARK,
                            Character.COMBINING_SPACING_MARK -> false;
                    default -> true;
                };
    }

    /** The rows as text, blanks at their ends left out. */
    public String text() {
        List<String> rows = new ArrayList<>();
        for (int row = 0; row < height; row++) {
            rows.add(new String(characters, row * width, width).stripTrailing());
        }
        return String.join("\n", rows) + "\n";
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Picture p
                && width == p.width
                && height == p.height
                && Arrays.equals(characters, p.characters)
                && Arrays.equals(styles, p.styles);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(characters);
    }
}
