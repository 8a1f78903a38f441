package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.Frame;
import com.googlecode.lanterna.screen.TerminalScreen;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What goes down the line, byte by byte. */
final class BytesTest {
    private final ByteArrayOutputStream line = new ByteArrayOutputStream();
    private final CountingOutput out = new CountingOutput(line);
    private Painter painter = painter(true);

    private Painter painter(boolean colour) {
        return painter(new DisplaySettings(true, colour, false));
    }

    private Painter painter(DisplaySettings settings) {
        try {
            TerminalScreen screen = new TerminalScreen(new FixedTerminal(out, 80, 24));
            screen.setCursorPosition(null);
            screen.startScreen();
            return new Painter(screen, settings);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @BeforeEach
    void firstPicture() throws IOException {
        paint(Frames.quiet());
    }

    private void paint(Frame frame) throws IOException {
        painter.paint(Screens.draw(frame, new ScreenModel(), true, 80, 24));
    }

    @Test
    void nothingIsSentWhenNothingChanged() throws IOException {
        long before = out.count();
        paint(Frames.quiet());
        assertEquals(before, out.count());
    }

    @Test
    void oneChangedValueTakesUnder400Bytes() throws IOException {
        long before = out.count();
        Picture changed = Screens.draw(Frames.quiet(), new ScreenModel(), true, 80, 24);
        changed.put(3, 26, "6.97", Style.WARNING);
        painter.paint(changed);
        assertTrue(out.count() > before);
        assertTrue(out.count() - before < 400, "bytes: " + (out.count() - before));
    }

    @Test
    void withoutColourNoColourIsSent() throws IOException {
        painter = painter(false);
        line.reset();
        paint(Frames.valveOpen());
        String sent = line.toString(StandardCharsets.UTF_8);
        assertFalse(sent.contains("\u001b[31m") || sent.contains("\u001b[33m"), "colour sequences");
        painter = painter(true);
        line.reset();
        paint(Frames.valveOpen());
        assertTrue(line.toString(StandardCharsets.UTF_8).contains("\u001b[31m"));
        painter = painter(new DisplaySettings(true, true, false, true));
        line.reset();
        paint(Frames.valveOpen());
        assertTrue(line.toString(StandardCharsets.UTF_8).contains("\u001b[38;5;160m"), "256 colours");
    }

    @Test
    void aClockThatMovesOnSendsUnder400Bytes() throws IOException {
        Frame before = Frames.quiet();
        Frame after = Frames.oneTickLater();
        paint(before);
        long sent = out.count();
        paint(after);
        assertTrue(out.count() > sent && out.count() - sent < 400, "bytes: " + (out.count() - sent));
    }
}
