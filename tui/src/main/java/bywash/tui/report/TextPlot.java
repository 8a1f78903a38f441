package bywash.tui.report;

import bywash.rules.text.Sentence;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** Values over days as plain text that any editor shows: a mark a column, the scale at the left, the dates below. */
final class TextPlot {
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
        PlotFrame frame = PlotFrame.around(low, high, decimals);
        return frame.draw(
                (column, row) -> !Double.isNaN(columns[column]) && frame.row(columns[column]) == row ? '*' : ' ',
                from.toString(),
                from.plusDays(ChronoUnit.DAYS.between(from, to) / 2).toString(),
                to.toString());
    }

    private static double[] columns(List<Point> points, LocalDate from, LocalDate to) {
        double[] sums = new double[PlotFrame.WIDTH];
        int[] counts = new int[PlotFrame.WIDTH];
        long days = Math.max(1, ChronoUnit.DAYS.between(from, to) + 1);
        for (Point p : points) {
            long day = ChronoUnit.DAYS.between(from, p.day());
            if (day >= 0 && day < days && Double.isFinite(p.value())) {
                int column = (int) (day * PlotFrame.WIDTH / days);
                sums[column] += p.value();
                counts[column]++;
            }
        }
        for (int i = 0; i < PlotFrame.WIDTH; i++) {
            sums[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
        }
        return sums;
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
