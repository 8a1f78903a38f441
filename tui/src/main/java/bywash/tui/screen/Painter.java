package bywash.tui.screen;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.screen.Screen;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Puts pictures on a Lanterna screen; sends nothing when the picture is the one already there. */
final class Painter {
    private final Screen screen;
    private final boolean colour;
    private @Nullable Picture last;

    Painter(Screen screen, boolean colour) {
        this.screen = screen;
        this.colour = colour;
    }

    /** Sends what changed; returns whether anything did. */
    boolean paint(Picture picture) throws IOException {
        Picture before = last;
        if (picture.equals(before)) {
            return false;
        }
        for (int row = 0; row < picture.height(); row++) {
            for (int column = 0; column < picture.width(); column++) {
                screen.setCharacter(column, row, cell(picture.character(row, column), picture.style(row, column)));
            }
        }
        boolean sameSize = before != null && before.width() == picture.width() && before.height() == picture.height();
        screen.refresh(sameSize ? Screen.RefreshType.DELTA : Screen.RefreshType.COMPLETE);
        last = picture;
        return true;
    }

    /** The next picture is sent whole. */
    void forget() {
        last = null;
    }

    private TextCharacter cell(char character, Style style) {
        TextColor plain = TextColor.ANSI.DEFAULT;
        return switch (style) {
            case PLAIN -> new TextCharacter(character, plain, plain);
            case STRONG -> new TextCharacter(character, plain, plain, SGR.BOLD);
            case SELECTED -> new TextCharacter(character, plain, plain, SGR.REVERSE);
            case WARNING -> new TextCharacter(character, colour ? TextColor.ANSI.YELLOW : plain, plain);
            case CRITICAL -> new TextCharacter(character, colour ? TextColor.ANSI.RED : plain, plain, SGR.BOLD);
        };
    }
}
