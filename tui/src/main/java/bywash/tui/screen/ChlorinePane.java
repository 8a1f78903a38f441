package bywash.tui.screen;

import bywash.tui.view.ChlorineView;
import bywash.tui.view.Tone;

/** The chlorine estimate with its range, the criteria it is held against, and its evidence. */
final class ChlorinePane {
    /** From this width on its evidence stands here too; else on its page. */
    private static final int ROOMY = 50;

    private ChlorinePane() {}

    static int wanted(ChlorineView view, int width) {
        return lines(view, width).size();
    }

    static void draw(Picture picture, int row, int width, int rows, ChlorineView view) {
        picture.heading(row, 0, width, "CHLORINE estimate");
        lines(view, width).drawFirst(picture, row + 1, rows, "[x: more]");
    }

    private static Lines lines(ChlorineView view, int width) {
        Style style = Style.of(view.tone());
        String mark = view.tone() == Tone.CRITICAL ? "!! " : view.tone() == Tone.WARNING ? "! " : "";
        Lines lines = new Lines(width);
        lines.add(view.range(), Style.PLAIN).add(mark + view.verdict(), style);
        lines.add(view.chance(), Style.PLAIN).add(view.criteria(), Style.PLAIN);
        if (width >= ROOMY) {
            for (String evidence : view.evidence()) {
                lines.add("-", 2, evidence, Style.PLAIN);
            }
        }
        return lines;
    }
}
