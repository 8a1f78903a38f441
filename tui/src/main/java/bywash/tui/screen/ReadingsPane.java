package bywash.tui.screen;

import bywash.tui.view.OverviewView;
import bywash.tui.view.ReadingLine;
import bywash.tui.view.Tone;
import java.util.List;

/** Water readings: value, good band, quality in a word, age, small trend. */
final class ReadingsPane {
    private static final int VALUE = 25;
    private static final int BAND = 36;
    private static final int WORD = 49;
    private static final int AGE = 62;
    private static final int TREND = 70;

    private ReadingsPane() {}

    static int trendColumns(int width) {
        return Math.max(1, Math.min(30, width - TREND));
    }

    static int draw(Picture picture, int row, int rows, OverviewView view) {
        List<ReadingLine> readings = view.readings();
        int width = picture.width();
        int shown = Math.min(rows, readings.size());
        String title = shown < readings.size() ? "WATER " + shown + " of " + readings.size() : "WATER";
        picture.heading(row, 0, width, title);
        picture.put(row, VALUE, " value ", Style.STRONG);
        picture.put(row, BAND, " good ", Style.STRONG);
        picture.put(row, WORD, " state ", Style.STRONG);
        picture.put(row, AGE, " age ", Style.STRONG);
        picture.put(row, TREND, " 30 min ", Style.STRONG);
        for (int i = 0; i < shown; i++) {
            line(picture, row + 1 + i, readings.get(i));
        }
        return row + 1 + shown;
    }

    private static void line(Picture picture, int row, ReadingLine reading) {
        Style style = Style.of(reading.tone());
        picture.put(row, 0, reading.tone() == Tone.PLAIN ? "" : "!", style);
        picture.put(row, 3, VALUE - 4, reading.name(), style);
        picture.put(row, VALUE + 1, BAND - VALUE - 1, reading.value(), style);
        picture.put(row, BAND + 1, WORD - BAND - 2, reading.band(), Style.PLAIN);
        picture.put(row, WORD + 1, AGE - WORD - 1, reading.word(), style);
        picture.put(row, AGE + 1, TREND - AGE - 1, reading.age(), Style.PLAIN);
        picture.put(row, TREND, picture.glyphs().trend(reading.trend(), reading.trendSpan()), Style.PLAIN);
    }
}
