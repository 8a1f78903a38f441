package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.Frame;
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
    void whatIsAbnormalCarriesAMarkOrAWordToo() {
        Picture picture = Screens.draw(Frames.valveOpen(), new ScreenModel(), true, 80, 24);
        String[] rows = picture.text().split("\n", -1);
        for (int row = 1; row < picture.height(); row++) {
            for (int column = 0; column < picture.width(); column++) {
                Style style = picture.style(row, column);
                boolean coloured = style == Style.WARNING || style == Style.CRITICAL;
                assertTrue(!coloured || rows[row].contains("!") || rows[row].contains("ug/L"), rows[row]);
            }
        }
    }

    @Test
    void theIncidentScreenAnswersTheFiveQuestionsInItsFirstEightRows() {
        String text = Screens.draw(Frames.valveOpen(), new ScreenModel(), false, 80, 24)
                .text();
        String top = String.join("\n", text.lines().limit(8).toList());
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
