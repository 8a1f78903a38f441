package bywash.tui.screen;

import bywash.tui.screen.KeyPress.Kind;
import bywash.tui.view.Frame;

/** Key sequences as text: newline is Enter, tab is Tab, {@code ^ v < >} are arrows, tilde is Esc, # is Backspace. */
final class Keys {
    private Keys() {}

    /** Presses all and returns the last effect. */
    static Effect press(ScreenModel model, Frame frame, String keys) {
        Effect effect = new Effect.Redraw();
        for (char c : keys.toCharArray()) {
            effect = model.handle(key(c), frame);
        }
        return effect;
    }

    private static KeyPress key(char c) {
        return switch (c) {
            case '\n' -> KeyPress.of(Kind.ENTER);
            case '\t' -> KeyPress.of(Kind.TAB);
            case '^' -> KeyPress.of(Kind.UP);
            case 'v' -> KeyPress.of(Kind.DOWN);
            case '<' -> KeyPress.of(Kind.LEFT);
            case '>' -> KeyPress.of(Kind.RIGHT);
            case '~' -> KeyPress.of(Kind.ESCAPE);
            case '#' -> KeyPress.of(Kind.BACKSPACE);
            default -> KeyPress.of(c);
        };
    }
}
