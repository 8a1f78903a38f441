package bywash.tui.screen;

import bywash.rules.engine.ProbeStatus;
import bywash.rules.site.Quantity;
import bywash.tui.chart.Cells;
import bywash.tui.chart.Marks;
import bywash.tui.chart.Series;
import bywash.tui.chart.Span;
import bywash.tui.chart.Window;
import bywash.tui.view.Frame;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Past values of one or several quantities over an hour to a season, one panel each over a common time axis. It follows
 * the clock until it is moved back in time.
 */
final class TrendsPage implements Page {
    /** Left of the plots: the value axis. */
    static final int AXIS = 9;

    private static final int LEAST_PANEL = 4;

    private Span span = Span.HOUR;
    private int chosen;
    private final Set<String> kept = new TreeSet<>();
    /** The end of the window; null follows the clock. */
    private @Nullable Instant end;
    /** Where the cursor stands; null is the newest column. */
    private @Nullable Instant cursor;

    private int columns = 60;

    @Override
    public String title() {
        return "Trends";
    }

    @Override
    public String purpose() {
        return "Past values over an hour, a day, a week or a season";
    }

    @Override
    public Character letter() {
        return 'g';
    }

    @Override
    public String barWord() {
        return "trends";
    }

    @Override
    public List<Binding> keys() {
        return List.of(
                Binding.of(KeyPress.Kind.LEFT, "earlier", "Cursor one column back", f -> cursor(f, -1)),
                Binding.of(KeyPress.Kind.RIGHT, "", "Cursor one column on", f -> cursor(f, 1)),
                Binding.of('-', "longer", "A longer stretch of time", f -> zoom(f, span.longer())),
                Binding.of('+', "shorter", "A shorter stretch of time", f -> zoom(f, span.shorter()))
                        .or(KeyPress.of('=')),
                Binding.of(KeyPress.Kind.DOWN, "quantity", "The next quantity", f -> choose(f, 1)),
                Binding.of(KeyPress.Kind.UP, "", "The quantity before", f -> choose(f, -1)),
                Binding.of(KeyPress.Kind.ENTER, "keep", "Keep this quantity beside the next, or let it go", this::keep),
                Binding.of(KeyPress.Kind.PAGE_UP, "", "Half a window back in time", f -> pan(f, -1))
                        .or(KeyPress.of('[')),
                Binding.of(KeyPress.Kind.PAGE_DOWN, "", "Half a window on in time", f -> pan(f, 1))
                        .or(KeyPress.of(']')),
                Binding.moves(KeyPress.Kind.END, "", "Back to now", this::now),
                Binding.of('1', "", "The last hour", f -> zoom(f, Span.HOUR)),
                Binding.of('2', "", "The last day", f -> zoom(f, Span.DAY)),
                Binding.of('3', "", "The last week", f -> zoom(f, Span.WEEK)),
                Binding.of('4', "", "The last season, 120 days", f -> zoom(f, Span.SEASON)));
    }

    private void now() {
        end = null;
        cursor = null;
    }

    private Window window(Frame frame) {
        return Window.endingWith(end == null ? frame.at() : end, span, columns);
    }

    private Effect cursor(Frame frame, int by) {
        Window window = window(frame);
        int column = column(window) + by;
        if (column < 0) {
            return pan(frame, -1);
        }
        if (column >= columns) {
            return end == null ? new Effect.Redraw() : pan(frame, 1);
        }
        cursor = column == columns - 1 && end == null ? null : window.start(column);
        return new Effect.Redraw();
    }

    private int column(Window window) {
        Instant at = cursor;
        return at == null ? window.columns() - 1 : Math.max(0, Math.min(window.columns() - 1, window.column(at)));
    }

    /** Keeps the cursor where it is in time. */
    private Effect zoom(Frame frame, Span to) {
        Instant at = cursor;
        span = to;
        if (at != null) {
            Instant middle = at.plus(to.length().dividedBy(2));
            end = middle.isBefore(frame.at()) ? middle : null;
        }
        return new Effect.Redraw();
    }

    private Effect pan(Frame frame, int by) {
        Window window = window(frame);
        Instant last = window.start(window.columns() - 1)
                .plus(span.length().dividedBy(2).multipliedBy(by));
        end = last.isBefore(frame.at()) ? last : null;
        Window moved = window(frame);
        Instant at = cursor == null ? window.start(window.columns() - 1) : cursor;
        cursor = end == null && by > 0 ? null : moved.start(Math.max(0, Math.min(columns - 1, moved.column(at))));
        return new Effect.Redraw();
    }

    private Effect choose(Frame frame, int by) {
        chosen = Math.floorMod(chosen + by, Math.max(1, probes(frame).size()));
        return new Effect.Redraw();
    }

    private Effect keep(Frame frame) {
        List<ProbeStatus> probes = probes(frame);
        if (!probes.isEmpty()) {
            String id = probes.get(Math.min(chosen, probes.size() - 1)).probe().id();
            if (!kept.remove(id)) {
                kept.add(id);
                return new Effect.Say("Kept; choose another quantity to set beside it.");
            }
        }
        return new Effect.Redraw();
    }

    private static List<ProbeStatus> probes(Frame frame) {
        return frame.snapshot().probes().stream()
                .filter(p -> p.probe().quantity() != Quantity.STATE)
                .toList();
    }

    private List<ProbeStatus> shown(Frame frame) {
        List<ProbeStatus> probes = probes(frame);
        List<ProbeStatus> shown = new ArrayList<>();
        for (int i = 0; i < probes.size(); i++) {
            if (i == chosen || kept.contains(probes.get(i).probe().id())) {
                shown.add(probes.get(i));
            }
        }
        return shown;
    }

    @Override
    public void draw(Picture body, Frame frame) {
        columns = Math.max(1, body.width() - AXIS);
        Window window = window(frame);
        List<ProbeStatus> shown = shown(frame);
        int room = body.height() - TrendsScreen.FRAME_ROWS;
        int panels = Math.max(1, Math.min(shown.size(), room / LEAST_PANEL));
        int from = Math.max(0, Math.min(place(shown, frame) - panels + 1, shown.size() - panels));
        List<Series> series = shown.subList(from, Math.min(shown.size(), from + panels)).stream()
                .map(p -> Series.of(p, frame, window, Cells.slices(body.glyphs().braille()) > 1))
                .toList();
        String hidden = panels < shown.size() ? ", " + (shown.size() - panels) + " more kept" : "";
        String heading = "TRENDS  " + span.word() + (end == null ? " up to now" : "") + hidden;
        TrendsScreen.draw(
                body,
                frame,
                new TrendsScreen.Plan(heading, window, span, series, column(window)),
                Marks.of(frame, window));
    }

    /** Where the chosen quantity stands among those shown. */
    private int place(List<ProbeStatus> shown, Frame frame) {
        List<ProbeStatus> probes = probes(frame);
        return probes.isEmpty() ? 0 : shown.indexOf(probes.get(Math.min(chosen, probes.size() - 1)));
    }
}
