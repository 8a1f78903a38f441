package bywash.tui.screen;

import bywash.tui.view.ChlorineView;
import bywash.tui.view.Tone;

/** The chlorine estimate with its range, the criteria it is held against, and its evidence. */
final class ChlorinePane {
    private ChlorinePane() {}

    static void draw(Picture picture, int row, int width, int rows, ChlorineView view) {
        picture.heading(row, 0, width, "CHLORINE estimate");
        Style style = Style.of(view.tone());
        String mark = view.tone() == Tone.CRITICAL ? "!! " : view.tone() == Tone.WARNING ? "! " : "";
        Lines lines = new Lines(width);
        lines.add(view.range(), style).add(mark + view.verdict(), style);
        lines.add(view.chance(), Style.PLAIN).add(view.criteria(), Style.PLAIN);
        for (String evidence : view.evidence()) {
            lines.add("-", 2, evidence, Style.PLAIN);
        }
        lines.drawFirst(picture, row + 1, rows, "[more]");
    }
}
