package bywash.tui.screen;

import com.googlecode.lanterna.input.KeyStroke;

/** One key press as typed. {@code character} counts for {@link Kind#CHARACTER} alone. */
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
        PAGE_UP("PgUp"),
        PAGE_DOWN("PgDn"),
        HOME("Home"),
        END("End"),
        BACKSPACE("Backspace"),
        INTERRUPT("Ctrl-C"),
        /** Acknowledges where letters are text. */
        CONTROL_A("Ctrl-A"),
        /** The other end is gone. */
        HANG_UP(""),
        OTHER("");

        private final String label;

        Kind(String label) {
            this.label = label;
        }
    }

    public static KeyPress of(char character) {
        return new KeyPress(Kind.CHARACTER, character);
    }

    /** The same key without Shift: commands do not tell capitals apart. */
    KeyPress lower() {
        return kind == Kind.CHARACTER ? of(Character.toLowerCase(character)) : this;
    }

    public static KeyPress of(Kind kind) {
        return new KeyPress(kind, ' ');
    }

    String label() {
        return kind != Kind.CHARACTER ? kind.label : character == ' ' ? "Space" : String.valueOf(character);
    }

    static KeyPress from(KeyStroke stroke) {
        return switch (stroke.getKeyType()) {
            case Character -> stroke.isCtrlDown() || stroke.isAltDown() ? control(stroke) : of(stroke.getCharacter());
            case Enter -> of(Kind.ENTER);
            case Escape -> of(Kind.ESCAPE);
            case Tab -> of(Kind.TAB);
            case ReverseTab -> of(Kind.BACK_TAB);
            case ArrowUp -> of(Kind.UP);
            case ArrowDown -> of(Kind.DOWN);
            case ArrowLeft -> of(Kind.LEFT);
            case ArrowRight -> of(Kind.RIGHT);
            case Backspace, Delete -> of(Kind.BACKSPACE);
            case PageUp -> of(Kind.PAGE_UP);
            case PageDown -> of(Kind.PAGE_DOWN);
            case Home -> of(Kind.HOME);
            case End -> of(Kind.END);
            case EOF -> of(Kind.HANG_UP);
            default -> of(Kind.OTHER);
        };
    }

    private static KeyPress control(KeyStroke stroke) {
        if (!stroke.isCtrlDown()) {
            return of(Kind.OTHER);
        }
        return switch (stroke.getCharacter()) {
            case 'c' -> of(Kind.INTERRUPT);
            case 'a' -> of(Kind.CONTROL_A);
            default -> of(Kind.OTHER);
        };
    }
}
