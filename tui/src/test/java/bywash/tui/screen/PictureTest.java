package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.Frame;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PictureTest {
    @Test
    void controlCharactersNeverReachTheGrid() {
        Frame frame = Frames.hostile();
        for (String keys : new String[] {"", "\n", "a\n"}) {
            ScreenModel model = new ScreenModel();
            Keys.press(model, frame, keys);
            String text = Screens.draw(frame, model, true, 100, 30).text();
            text.chars()
                    .forEach(c -> assertTrue(
                            c == '\n'
                                    || (c >= ' ' && c != 0x7f && !(c >= 0x80 && c < 0xa0) && c != 0x202e && c < 0xd800),
                            "code " + c));
        }
    }

    @Test
    void anAsciiPictureIsAscii() {
        String text = Screens.draw(Frames.valveOpen(), new ScreenModel(), false, 120, 40)
                .text();
        assertTrue(text.chars().allMatch(c -> c == '\n' || (c >= ' ' && c < 0x7f)));
    }

    @Test
    void whatIsAbnormalCarriesAMarkInItsOwnPane() {
        List<Frame> frames = List.of(Frames.valveOpen(), Frames.probeSilent(), Frames.oxygenLowNoAlarmYet());
        for (Frame frame : frames) {
            for (int[] size : new int[][] {{80, 24}, {120, 40}, {60, 18}}) {
                Picture picture = Screens.draw(frame, new ScreenModel(), true, size[0], size[1]);
                for (int row = 1; row < picture.height(); row++) {
                    int middle = picture.width() < 80 ? picture.width() : picture.width() * 38 / 80;
                    coloursCarryAMark(picture, row, 0, middle);
                    coloursCarryAMark(picture, row, middle, picture.width());
                }
            }
        }
    }

    /** Runs of colour: one that begins in this part of the row has its mark there, or in the row's first cells. */
    private static void coloursCarryAMark(Picture picture, int row, int from, int to) {
        String text = picture.text().split("\n", -1)[row];
        String part = from < text.length() ? text.substring(from, Math.min(to, text.length())) : "";
        for (int column = from; column < to; column++) {
            Style style = picture.style(row, column);
            boolean coloured = style == Style.WARNING || style == Style.CRITICAL;
            boolean water = "█▁▂▃▄▅▆▇ ".indexOf(picture.character(row, column)) >= 0;
            boolean beside = picture.width() > 80 && text.matches(" [│┃].*");
            boolean wrapped = row < 5 || text.startsWith(" ".repeat(17));
            assertTrue(
                    !coloured || water || beside || wrapped || part.contains("!") || text.startsWith("!"),
                    row + ": " + text);
        }
    }

    @Test
    void whatIsNormalHasNoColour() {
        for (Frame frame : List.of(Frames.quiet(), Frames.topUpRunning())) {
            Picture picture = Screens.draw(frame, new ScreenModel(), true, 120, 40);
            for (int row = 0; row < picture.height(); row++) {
                for (int column = 0; column < picture.width(); column++) {
                    Style style = picture.style(row, column);
                    assertFalse(style == Style.WARNING || style == Style.CRITICAL, row + ", " + column);
                }
            }
        }
    }

    @Test
    void theIncidentScreenAnswersTheFiveQuestionsInItsFirstEightRows() {
        String text = Screens.draw(Frames.valveOpen(), new ScreenModel(), false, 80, 24)
                .text();
        String top = String.join("\n", text.lines().limit(8).toList()).replaceAll("\n +", " ");
        for (String answer : new String[] {
            "Water nobody declared is entering sump",
            "Since  06:02 (8 min)",
            "12 min to overflow",
            "6 min to 19 ug/L",
            "DO NOW Shut the valve",
            "Why    Beyond noise"
        }) {
            assertTrue(top.contains(answer), answer);
        }
        assertEquals(24, text.lines().count());
    }
}
