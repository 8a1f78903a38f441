package bywash.tui.report;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Values with their range over hours or days as plain text: a star for the value, colons for its range, a line for a limit. */
final class TimePlot {
    private static final int WIDTH = 62;
    private static final int HEIGHT = 9;
    private static final int SCALE = 8;

    /** One value with its range. */
    record Point(Instant at, double low, double value, double high) {}

    private static final class Column {
        private int count;
        private double sum;
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;

        void add(Point p) {
            count++;
            sum += p.value();
            low = Math.min(low, p.low());
            high = Math.max(high, p.high());
        }
    }

    private final Column[] columns = new Column[WIDTH];
    private final Instant from;
    private final Instant to;
    private final ZoneId zone;
    private double limit = Double.NaN;
    private int decimals;
    private double bottom = Double.POSITIVE_INFINITY;
    private double top = Double.NEGATIVE_INFINITY;

    TimePlot(Instant from, Instant to, ZoneId zone) {
        this.from = from;
        this.to = to;
        this.zone = zone;
    }

    /** A value that a line is drawn at; it is in the picture where it is not far above all else. */
    TimePlot limit(double value) {
        limit = value;
        return this;
    }

    TimePlot decimals(int count) {
        decimals = count;
        return this;
    }

    /** The picture; empty without points. */
    String of(List<Point> points) {
        double span = Math.max(1, Duration.between(from, to).toMillis());
        for (Point p : points) {
            int n = (int) (Duration.between(from, p.at()).toMillis() / span * WIDTH);
            if (n >= 0 && n < WIDTH && Double.isFinite(p.value())) {
                columns[n] = columns[n] == null ? new Column() : columns[n];
                columns[n].add(p);
            }
        }
        scale();
        if (bottom > top) {
            return "";
        }
        List<String> lines = new ArrayList<>();
        for (int row = HEIGHT - 1; row >= 0; row--) {
            lines.add(line(row));
        }
        lines.add(" ".repeat(SCALE) + "+" + "-".repeat(WIDTH));
        lines.add(axis());
        return String.join("\n", lines);
    }

    private void scale() {
        for (Column c : columns) {
            if (c != null) {
                bottom = Math.min(bottom, c.low);
                top = Math.max(top, c.high);
            }
        }
        if (bottom <= top && limit <= top * 3) {
            top = Math.max(top, limit);
            bottom = Math.min(bottom, limit);
        }
        double spare = Math.max(0, Math.pow(10, -decimals) - (top - bottom)) / 2;
        bottom -= spare;
        top += spare;
    }

    private int row(double value) {
        return (int) Math.round((value - bottom) / (top - bottom) * (HEIGHT - 1));
    }

    private String line(int row) {
        StringBuilder line = new StringBuilder();
        boolean labelled = row == 0 || row == HEIGHT - 1 || row == HEIGHT / 2;
        double value = bottom + (top - bottom) * row / (HEIGHT - 1);
        String label = labelled ? String.format(Locale.ROOT, "%." + decimals + "f", value + 0.0) : "";
        line.append(" ".repeat(Math.max(0, SCALE - 1 - label.length())))
                .append(label)
                .append(labelled ? " +" : " |");
        for (Column c : columns) {
            line.append(mark(c, row));
        }
        return line.toString().stripTrailing();
    }

    private char mark(Column c, int row) {
        if (c != null && row(c.sum / c.count) == row) {
            return '*';
        }
        if (c != null && row >= row(c.low) && row <= row(c.high)) {
            return ':';
        }
        return row(limit) == row && !Double.isNaN(limit) ? '-' : ' ';
    }

    private String axis() {
        boolean days = Duration.between(from, to).toHours() >= 72;
        DateTimeFormatter format = DateTimeFormatter.ofPattern(days ? "yyyy-MM-dd" : "MM-dd HH:mm", Locale.ROOT);
        ZonedDateTime first = from.atZone(zone);
        ZonedDateTime last = to.atZone(zone);
        ZonedDateTime middle =
                from.plus(Duration.between(from, to).dividedBy(2)).atZone(zone);
        String a = format.format(first);
        int gap = (WIDTH - 3 * a.length()) / 2;
        return " ".repeat(SCALE + 1)
                + a
                + " ".repeat(gap)
                + format.format(middle)
                + " ".repeat(gap)
                + format.format(last);
    }
}
