package bywash.tui.report;

import bywash.rules.text.Sentence;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** Values over days as plain text that any editor shows: a mark a column, the scale at the left, the dates below. */
final class TextPlot {
    private static final int WIDTH = 62;
    private static final int HEIGHT = 9;
    private static final int SCALE = 8;

    /** One value on one day. */
    record Point(LocalDate day, double value) {}

    private TextPlot() {}

    /** Draws the points; where several fall into one column their mean is drawn. Empty without points. */
    static String of(List<Point> points, LocalDate from, LocalDate to, int decimals) {
        double[] columns = columns(points, from, to);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : columns) {
            if (!Double.isNaN(value)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
        if (low > high) {
            return "";
        }
        double least = Math.pow(10, -decimals);
        double spare = Math.max(0, least - (high - low)) / 2;
        low -= spare;
        high += spare;
        List<String> lines = new ArrayList<>();
        for (int row = HEIGHT - 1; row >= 0; row--) {
            lines.add(line(columns, row, low, high, decimals));
        }
        lines.add(" ".repeat(SCALE) + "+" + "-".repeat(WIDTH));
        lines.add(dates(from, to));
        return String.join("\n", lines);
    }

    private static double[] columns(List<Point> points, LocalDate from, LocalDate to) {
        double[] sums = new double[WIDTH];
        int[] counts = new int[WIDTH];
        long days = Math.max(1, ChronoUnit.DAYS.between(from, to) + 1);
        for (Point p : points) {
            long day = ChronoUnit.DAYS.between(from, p.day());
            if (day >= 0 && day < days && Double.isFinite(p.value())) {
                int column = (int) (day * WIDTH / days);
                sums[column] += p.value();
                counts[column]++;
            }
        }
        for (int i = 0; i < WIDTH; i++) {
            sums[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
        }
        return sums;
    }

    private static String line(double[] columns, int row, double low, double high, int decimals) {
        StringBuilder line = new StringBuilder();
        boolean labelled = row == 0 || row == HEIGHT - 1 || row == HEIGHT / 2;
        double value = low + (high - low) * row / (HEIGHT - 1);
        String label = labelled ? Sentence.of("%." + decimals + "f", value) : "";
        line.append(" ".repeat(Math.max(0, SCALE - 1 - label.length())))
                .append(label)
                .append(labelled ? " +" : " |");
        for (double v : columns) {
            boolean here = !Double.isNaN(v) && Math.round((v - low) / (high - low) * (HEIGHT - 1)) == row;
            line.append(here ? '*' : ' ');
        }
        return line.toString().stripTrailing();
    }

    private static String dates(LocalDate from, LocalDate to) {
        String first = from.toString();
        String last = to.toString();
        String middle = from.plusDays(ChronoUnit.DAYS.between(from, to) / 2).toString();
        int gap = (WIDTH - first.length() - middle.length() - last.length()) / 2;
        return " ".repeat(SCALE + 1) + first + " ".repeat(gap) + middle + " ".repeat(gap) + last;
    }

    /** How many values fall into each of equal steps, as bars. */
    static String histogram(List<Double> values, double step, String unit) {
        double low = values.stream().mapToDouble(v -> v).min().orElse(0);
        double high = values.stream().mapToDouble(v -> v).max().orElse(0);
        List<String> lines = new ArrayList<>();
        for (double from = Math.floor(low / step) * step; from <= high; from += step) {
            double start = from;
            long count =
                    values.stream().filter(v -> v >= start && v < start + step).count();
            lines.add(Sentence.of("%6.0f to %4.0f %s  %s %d", from, from + step, unit, "#".repeat((int) count), count));
        }
        return String.join("\n", lines);
    }
}
