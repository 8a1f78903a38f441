package bywash.tui.screen;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.screen.Screen;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Puts pictures on a Lanterna screen; sends nothing when the picture is the one already there. */
final class Painter {
    /** Numbers of the 256-colour table; both keep their contrast on black and on white. */
    private static final TextColor AMBER = new TextColor.Indexed(172);

    private static final TextColor RED = new TextColor.Indexed(160);

    private final Screen screen;
    private final TextColor warning;
    private final TextColor critical;
    /** Those of plain letters are many and always the same, and each takes long to make. */
    private final @Nullable TextCharacter[][] made = new @Nullable TextCharacter[Style.values().length][128];

    private @Nullable Picture last;

    Painter(Screen screen, DisplaySettings settings) {
        this.screen = screen;
        TextColor plain = TextColor.ANSI.DEFAULT;
        this.warning = settings.manyColours() ? AMBER : settings.colour() ? TextColor.ANSI.YELLOW : plain;
        this.critical = settings.manyColours() ? RED : settings.colour() ? TextColor.ANSI.RED : plain;
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
        TextCharacter[] ofStyle = made[style.ordinal()];
        if (character >= ofStyle.length) {
            return make(character, style);
        }
        TextCharacter cell = ofStyle[character];
        if (cell == null) {
            cell = make(character, style);
            ofStyle[character] = cell;
        }
        return cell;
    }

    private TextCharacter make(char character, Style style) {
        TextColor plain = TextColor.ANSI.DEFAULT;
        return switch (style) {
            case PLAIN -> new TextCharacter(character, plain, plain);
            case STRONG -> new TextCharacter(character, plain, plain, SGR.BOLD);
            case SELECTED -> new TextCharacter(character, plain, plain, SGR.REVERSE);
            case WARNING -> new TextCharacter(character, warning, plain);
            case CRITICAL -> new TextCharacter(character, critical, plain, SGR.BOLD);
        };
    }
}
