package bywash.tui.chart;

import bywash.tui.view.HistorySource.Bucket;
import java.util.List;

/**
 * One quantity plotted into character cells: from the lowest to the highest value of each slice, slices joined by their
 * means, a slice without readings left open. A braille cell holds 2 slices of 4 steps; an ASCII cell one.
 */
public final class Cells {
    private static final char BRAILLE = '\u2800';
    private static final int[][] DOTS = {{0x40, 0x04, 0x02, 0x01}, {0x80, 0x20, 0x10, 0x08}};
    private static final char ASCII_RANGE = '|';
    private static final char ASCII_VALUE = '*';

    private Cells() {}

    /** How many slices one column takes. */
    public static int slices(boolean unicode) {
        return unicode ? 2 : 1;
    }

    /** Rows from top to bottom; blanks where nothing is drawn. */
    public static char[][] plot(List<Bucket> slices, Scale scale, int rows, boolean unicode) {
        return unicode ? braille(slices, scale, rows) : ascii(slices, scale, rows);
    }

    private static char[][] braille(List<Bucket> slices, Scale scale, int rows) {
        char[][] cells = blank(rows, slices.size() / 2);
        for (int slice = 0; slice < cells[0].length * 2; slice++) {
            int[] range = range(slices, slice, scale, rows * 4);
            for (int step = range[0]; step <= range[1]; step++) {
                int row = rows - 1 - step / 4;
                char before = cells[row][slice / 2];
                int dots = before == ' ' ? 0 : before - BRAILLE;
                cells[row][slice / 2] = (char) (BRAILLE + (dots | DOTS[slice % 2][step % 4]));
            }
        }
        return cells;
    }

    private static char[][] ascii(List<Bucket> slices, Scale scale, int rows) {
        char[][] cells = blank(rows, slices.size());
        for (int slice = 0; slice < slices.size(); slice++) {
            int[] range = range(slices, slice, scale, rows);
            for (int step = range[0]; step <= range[1]; step++) {
                cells[rows - 1 - step][slice] = ASCII_RANGE;
            }
            if (slices.get(slice).count() > 0) {
                cells[rows - 1 - scale.step(slices.get(slice).mean(), rows)][slice] = ASCII_VALUE;
            }
        }
        return cells;
    }

    /** The steps that a slice fills: its own range, and the way to the mean before; an empty range for a gap. */
    private static int[] range(List<Bucket> slices, int slice, Scale scale, int steps) {
        Bucket bucket = slices.get(slice);
        if (bucket.count() == 0) {
            return new int[] {0, -1};
        }
        int low = scale.step(bucket.low(), steps);
        int high = scale.step(bucket.high(), steps);
        if (slice > 0 && slices.get(slice - 1).count() > 0) {
            int before = scale.step(slices.get(slice - 1).mean(), steps);
            low = Math.min(low, before < low ? before + 1 : before);
            high = Math.max(high, before > high ? before - 1 : before);
        }
        return new int[] {low, high};
    }

    private static char[][] blank(int rows, int columns) {
        char[][] cells = new char[rows][columns];
        for (char[] row : cells) {
            java.util.Arrays.fill(row, ' ');
        }
        return cells;
    }
}
