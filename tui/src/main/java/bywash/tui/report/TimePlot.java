package bywash.tui.report;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Values with their range over hours or days as plain text: a star for the value, colons for its range, a line for a limit. */
final class TimePlot {
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

    private final Column[] columns = new Column[PlotFrame.WIDTH];
    private final Instant from;
    private final Instant to;
    private final ZoneId zone;
    private double limit = Double.NaN;
    private int decimals;

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
            int n = (int) (Duration.between(from, p.at()).toMillis() / span * PlotFrame.WIDTH);
            if (n >= 0 && n < PlotFrame.WIDTH && Double.isFinite(p.value())) {
                columns[n] = columns[n] == null ? new Column() : columns[n];
                columns[n].add(p);
            }
        }
        PlotFrame frame = frame();
        DateTimeFormatter format = DateTimeFormatter.ofPattern(
                Duration.between(from, to).toHours() >= 72 ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm", Locale.ROOT);
        Instant middle = from.plus(Duration.between(from, to).dividedBy(2));
        return frame == null
                ? ""
                : frame.draw(
                        (column, row) -> mark(frame, columns[column], row),
                        format.format(from.atZone(zone)),
                        format.format(middle.atZone(zone)),
                        format.format(to.atZone(zone)));
    }

    private @Nullable PlotFrame frame() {
        double bottom = Double.POSITIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (Column c : columns) {
            if (c != null) {
                bottom = Math.min(bottom, c.low);
                top = Math.max(top, c.high);
            }
        }
        if (bottom > top) {
            return null;
        }
        if (limit <= top * 3) {
            top = Math.max(top, limit);
            bottom = Math.min(bottom, limit);
        }
        return PlotFrame.around(bottom, top, decimals);
    }

    private char mark(PlotFrame frame, @Nullable Column c, int row) {
        if (c != null && frame.row(c.sum / c.count) == row) {
            return '*';
        }
        if (c != null && row >= frame.row(c.low) && row <= frame.row(c.high)) {
            return ':';
        }
        return frame.row(limit) == row && !Double.isNaN(limit) ? '-' : ' ';
    }
}
