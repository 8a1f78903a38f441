package bywash.tui.chart;

import bywash.rules.engine.ProbeStatus;
import bywash.rules.site.Band;
import bywash.rules.site.Quantity;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.Frame;
import bywash.tui.view.HistorySource.Bucket;
import bywash.tui.view.ReadingLine;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One probe's values in a window.
 *
 * @param slices as many to a column as the cells take
 * @param columns one bucket a column
 * @param band the good band; null where none applies
 */
public record Series(
        String name,
        Quantity quantity,
        List<Bucket> slices,
        List<Bucket> columns,
        Scale scale,
        @Nullable Band band) {

    private static final int JUST_BEFORE = 2;

    public Series {
        slices = List.copyOf(slices);
        columns = List.copyOf(columns);
    }

    public static Series of(ProbeStatus status, Frame frame, Window window, boolean unicode) {
        int each = Cells.slices(unicode);
        List<Bucket> slices =
                frame.trends().buckets(status.probe().id(), window.from(), window.to(), window.columns() * each);
        double reach = status.probe().silence().toMillis() * (double) each / window.columnMs();
        List<Bucket> bridged = Gaps.bridged(slices, reach);
        Quantity quantity = status.probe().quantity();
        return new Series(
                ReadingLine.fullName(status),
                quantity,
                bridged,
                joined(slices, bridged, each),
                Scale.of(slices, ReadingLine.leastSpan(quantity)),
                status.band());
    }

    /** Column by column the readings themselves; where none came but the plot is bridged, the bridge. */
    private static List<Bucket> joined(List<Bucket> slices, List<Bucket> bridged, int each) {
        List<Bucket> columns = new ArrayList<>();
        for (int i = 0; i + each <= slices.size(); i += each) {
            Bucket read = slices.subList(i, i + each).stream().reduce(Bucket.EMPTY, Bucket::plus);
            columns.add(read.count() > 0 ? read : bridged.get(i));
        }
        return columns;
    }

    /** What it was in a column, in words. */
    public String at(int column, DisplayUnits units) {
        if (column < 0 || column >= columns.size()) {
            return "";
        }
        Bucket bucket = columns.get(column);
        if (bucket.count() == 0) {
            return before(column, units);
        }
        return words(bucket, units);
    }

    /** The newest column is often empty yet; what stood just before it is what the grower asks for. */
    private String before(int column, DisplayUnits units) {
        for (int i = column - 1; i >= Math.max(0, column - JUST_BEFORE); i--) {
            if (columns.get(i).count() > 0) {
                return words(columns.get(i), units) + ", just before";
            }
        }
        return "no reading";
    }

    private String words(Bucket bucket, DisplayUnits units) {
        String mean = units.value(quantity, bucket.mean());
        String low = units.value(quantity, bucket.low());
        String high = units.value(quantity, bucket.high());
        return low.equals(high) ? mean : mean + " (" + low + " to " + high + ")";
    }
}
