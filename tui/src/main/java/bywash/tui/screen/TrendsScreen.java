package bywash.tui.screen;

import bywash.rules.site.Band;
import bywash.tui.chart.Cells;
import bywash.tui.chart.Marks;
import bywash.tui.chart.Series;
import bywash.tui.chart.Span;
import bywash.tui.chart.TimeAxis;
import bywash.tui.chart.Window;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.Frame;
import bywash.tui.view.LogLine;
import bywash.tui.view.Words;
import java.util.List;

/** Draws panels over one time axis, what happened below them, and what stands at the cursor. */
final class TrendsScreen {
    /** Heading, marks, axis, and the lines that say what stands at the cursor. */
    static final int FRAME_ROWS = 6;

    private static final int EVENTS = 2;

    /** @param cursor its column */
    record Plan(String heading, Window window, Span span, List<Series> series, int cursor) {}

    private TrendsScreen() {}

    static void draw(Picture body, Frame frame, Plan plan, Marks marks) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        body.heading(0, 0, body.width(), plan.heading());
        int room = Math.max(2, body.height() - FRAME_ROWS);
        int each = room / Math.max(1, plan.series().size());
        int row = 1;
        for (Series series : plan.series()) {
            panel(body, row, each, series, plan, units);
            row += each;
        }
        if (plan.series().isEmpty()) {
            body.put(row, 0, "No probe to plot.", Style.PLAIN);
        }
        axis(body, row, frame, plan, marks);
        atCursor(body, row + 2, frame, plan, marks);
    }

    private static void panel(Picture body, int row, int rows, Series series, Plan plan, DisplayUnits units) {
        String name = series.name() + "  ";
        int after = body.put(row, 0, name, Style.STRONG);
        body.put(row, after, body.width() - after, series.at(plan.cursor(), units), Style.SELECTED);
        int height = rows - 1;
        if (height < 1) {
            return;
        }
        char[][] cells = Cells.plot(
                series.slices(), series.scale(), height, body.glyphs().braille());
        band(cells, series, body.glyphs());
        body.put(
                row + 1,
                0,
                TrendsPage.AXIS - 1,
                units.value(series.quantity(), series.scale().high()),
                Style.PLAIN);
        if (height > 1) {
            body.put(
                    row + height,
                    0,
                    TrendsPage.AXIS - 1,
                    units.value(series.quantity(), series.scale().low()),
                    Style.PLAIN);
        }
        for (int r = 0; r < height; r++) {
            body.put(
                    row + 1 + r,
                    TrendsPage.AXIS - 1,
                    String.valueOf(body.glyphs().wall()),
                    Style.PLAIN);
            for (int c = 0; c < Math.min(plan.window().columns(), cells[r].length); c++) {
                boolean here = c == plan.cursor();
                char cell = here && cells[r][c] == ' ' ? body.glyphs().cursor() : cells[r][c];
                body.put(row + 1 + r, TrendsPage.AXIS + c, String.valueOf(cell), here ? Style.STRONG : Style.PLAIN);
            }
        }
    }

    /** The ends of the good band, where they lie within the scale and nothing is plotted over them. */
    private static void band(char[][] cells, Series series, Glyphs glyphs) {
        Band band = series.band();
        if (band == null) {
            return;
        }
        for (double edge : new double[] {band.low(), band.high()}) {
            int row = series.scale().row(edge, cells.length);
            for (int column = 0; row >= 0 && column < cells[row].length; column++) {
                cells[row][column] = cells[row][column] == ' ' ? glyphs.limit() : cells[row][column];
            }
        }
    }

    private static void axis(Picture body, int row, Frame frame, Plan plan, Marks marks) {
        String signs = marks.row(plan.window().columns());
        body.put(row, 0, TrendsPage.AXIS - 1, "events", Style.PLAIN);
        for (int column = 0; column < signs.length(); column++) {
            Style style = signs.charAt(column) == Marks.ALARM ? Style.WARNING : Style.PLAIN;
            body.put(row, TrendsPage.AXIS + column, String.valueOf(signs.charAt(column)), style);
        }
        for (TimeAxis.Tick tick : TimeAxis.ticks(
                plan.window(), plan.span(), frame.snapshot().site().timeZone())) {
            body.put(row + 1, TrendsPage.AXIS + tick.column(), body.glyphs().tick() + tick.label(), Style.PLAIN);
        }
    }

    private static void atCursor(Picture body, int row, Frame frame, Plan plan, Marks marks) {
        String when = Words.clock(
                plan.window().start(plan.cursor()),
                frame.at(),
                frame.snapshot().site().timeZone());
        List<LogLine> here = marks.at(plan.cursor());
        String more = here.size() > EVENTS ? ", " + (here.size() - EVENTS) + " more events" : "";
        String keys = here.isEmpty() ? ", no event here (! alarm raised, n entry)" : more;
        body.put(row, 0, body.width(), "at " + when + keys, Style.STRONG);
        for (int i = 0; i < Math.min(EVENTS, here.size()); i++) {
            LogLine line = here.get(i);
            String text = (line.mark() + " " + line.when() + " " + line.text()).strip();
            body.put(row + 1 + i, 0, body.width(), text, Style.of(line.tone()));
        }
    }
}
