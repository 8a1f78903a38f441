package bywash.tui.report;

import bywash.rules.text.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntBinaryOperator;

/**
 * The frame of a plot in plain text that any editor shows: the scale at the left, an axis below, room for a mark in each column
 * of each row.
 *
 * @param bottom value of the lowest row, @param top of the highest
 */
record PlotFrame(double bottom, double top, int decimals) {
    static final int WIDTH = 62;
    private static final int HEIGHT = 9;
    private static final int SCALE = 8;

    /** Around values from low to high, at least one step of the last decimal high. */
    static PlotFrame around(double low, double high, int decimals) {
        double spare = Math.max(0, Math.pow(10, -decimals) - (high - low)) / 2;
        return new PlotFrame(low - spare, high + spare, decimals);
    }

    /** The row of a value, 0 the lowest. */
    int row(double value) {
        return (int) Math.round((value - bottom) / (top - bottom) * (HEIGHT - 1));
    }

    /** The whole picture. @param mark of a column and a row; @param first of three labels below, equally long */
    String draw(IntBinaryOperator mark, String first, String middle, String last) {
        List<String> lines = new ArrayList<>();
        for (int row = HEIGHT - 1; row >= 0; row--) {
            StringBuilder line = new StringBuilder(scale(row));
            for (int column = 0; column < WIDTH; column++) {
                line.append((char) mark.applyAsInt(column, row));
            }
            lines.add(line.toString().stripTrailing());
        }
        lines.add(" ".repeat(SCALE) + "+" + "-".repeat(WIDTH));
        int gap = (WIDTH - first.length() - middle.length() - last.length()) / 2;
        lines.add(" ".repeat(SCALE + 1) + first + " ".repeat(gap) + middle + " ".repeat(gap) + last);
        return String.join("\n", lines);
    }

    private String scale(int row) {
        boolean labelled = row == 0 || row == HEIGHT - 1 || row == HEIGHT / 2;
        String label = labelled ? Figures.of(bottom + (top - bottom) * row / (HEIGHT - 1), decimals) : "";
        return " ".repeat(Math.max(0, SCALE - 1 - label.length())) + label + (labelled ? " +" : " |");
    }
}
