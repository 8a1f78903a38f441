package bywash.tui.screen;

import com.googlecode.lanterna.input.KeyStroke;

/** One key press. {@code character} counts for {@link Kind#CHARACTER} alone. */
public record KeyPress(Kind kind, char character) {

    /** Which key. */
    public enum Kind {
        CHARACTER(""),
        ENTER("Enter"),
        ESCAPE("Esc"),
        TAB("Tab"),
        BACK_TAB("Shift-Tab"),
        UP("Up"),
        DOWN("Down"),
        LEFT("Left"),
        RIGHT("Right"),
        BACKSPACE("Backspace"),
        INTERRUPT("Ctrl-C"),
        /** The other end is gone. */
        HANG_UP(""),
        OTHER("");

        private final String label;

        Kind(String label) {
            this.label = label;
        }
    }

    public static KeyPress of(char character) {
        return new KeyPress(Kind.CHARACTER, Character.toLowerCase(character));
    }

    public static KeyPress of(Kind kind) {
        return new KeyPress(kind, ' ');
    }

    String label() {
        return kind == Kind.CHARACTER ? String.valueOf(character) : kind.label;
    }

    static KeyPress from(KeyStroke stroke) {
        return switch (stroke.getKeyType()) {
            case Character ->
                stroke.isCtrlDown() || stroke.isAltDown()
                        ? of(stroke.isCtrlDown() && stroke.getCharacter() == 'c' ? Kind.INTERRUPT : Kind.OTHER)
                        : of(stroke.getCharacter());
            case Enter -> of(Kind.ENTER);
            case Escape -> of(Kind.ESCAPE);
            case Tab -> of(Kind.TAB);
            case ReverseTab -> of(Kind.BACK_TAB);
            case ArrowUp -> of(Kind.UP);
            case ArrowDown -> of(Kind.DOWN);
            case ArrowLeft -> of(Kind.LEFT);
            case ArrowRight -> of(Kind.RIGHT);
            case Backspace, Delete -> of(Kind.BACKSPACE);
            case EOF -> of(Kind.HANG_UP);
            default -> of(Kind.OTHER);
        };
    }
}
