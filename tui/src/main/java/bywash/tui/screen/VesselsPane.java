package bywash.tui.screen;

import bywash.tui.view.OverviewView;
import bywash.tui.view.Tone;
import bywash.tui.view.VesselLine;

/** Vessels: level against the overflow as a bar, volume, net flow, freeboard, what the water does, time left. */
final class VesselsPane {
    private static final int BAR = 13;
    private static final int CELLS = 10;
    private static final int VOLUME = 25;
    private static final int FLOW = 33;
    private static final int FREEBOARD = 46;
    private static final int WORD = 56;
    private static final int LEFT = 68;

    private VesselsPane() {}

    static int wanted(OverviewView view) {
        int extra = (view.topUp().isEmpty() ? 0 : 1) + (view.unprobed().isEmpty() ? 0 : 1);
        return view.vessels().size() + extra;
    }

    static int draw(Picture picture, int row, int rows, OverviewView view) {
        int all = view.vessels().size();
        int lines = view.topUp().isEmpty() ? rows : rows - 1;
        int shown = Math.min(lines, all);
        picture.heading(row, 0, picture.width(), shown < all ? "VESSELS " + shown + " of " + all : "VESSELS");
        picture.put(row, BAR, " to overflow ", Style.STRONG);
        picture.put(row, VOLUME, " volume ", Style.STRONG);
        picture.put(row, FLOW, " net flow ", Style.STRONG);
        picture.put(row, FREEBOARD, " freeboard", Style.STRONG);
        picture.put(row, WORD, " water ", Style.STRONG);
        picture.put(row, LEFT, " left ", Style.STRONG);
        int next = row + 1;
        for (int i = 0; i < shown; i++) {
            line(picture, next++, view.vessels().get(i));
        }
        if (!view.topUp().isEmpty() && rows > 0) {
            picture.put(next++, 3, picture.width() - 3, view.topUp(), Style.STRONG);
        }
        if (!view.unprobed().isEmpty() && next <= row + rows) {
            String text = "no level probe: " + view.unprobed();
            picture.put(next++, 3, picture.width() - 3, text, Style.PLAIN);
        }
        return next;
    }

    private static void line(Picture picture, int row, VesselLine vessel) {
        Style style = Style.of(vessel.tone());
        picture.put(row, 0, vessel.tone() == Tone.PLAIN ? "" : vessel.tone() == Tone.WARNING ? "!" : "!!", style);
        picture.put(row, 3, BAR - 3, vessel.name(), style);
        picture.put(
                row,
                BAR,
                "[" + picture.glyphs().bar(vessel.fill(), CELLS, vessel.usualLow(), vessel.usualHigh()) + "]",
                style);
        picture.put(row, VOLUME + 1, FLOW - VOLUME - 1, vessel.volume(), Style.PLAIN);
        picture.put(row, FLOW + 1, FREEBOARD - FLOW - 1, vessel.netFlow(), style);
        picture.put(row, FREEBOARD + 1, WORD - FREEBOARD - 1, vessel.freeboard(), Style.PLAIN);
        picture.put(row, WORD + 1, LEFT - WORD - 1, vessel.word(), style);
        picture.put(row, LEFT, picture.width() - LEFT, vessel.left(), style);
    }
}
