package bywash.tui.screen;

import bywash.tui.view.OverviewView;

/** Chlorine on the left, alarms on the right. */
final class LowerPanes {
    private LowerPanes() {}

    static int wanted(OverviewView view, int width) {
        return Math.max(ChlorinePane.wanted(view.chlorine(), left(width)), AlarmsPane.wanted(view, width));
    }

    static void draw(Picture picture, int row, int rows, OverviewView view, int chosen) {
        int left = left(picture.width());
        ChlorinePane.draw(picture, row, left, rows, view.chlorine());
        AlarmsPane.draw(picture, row, left + 1, rows, view, chosen);
    }

    private static int left(int width) {
        return width * 38 / 80;
    }
}
