package bywash.tui.screen;

import bywash.tui.view.Frame;
import java.util.List;

/** A page of lines that may be longer than the screen; arrows and PgUp, PgDn scroll it. */
public abstract class ScrollPage implements Page {
    private int top;
    private int rows = 1;
    private int all;

    /** Its lines under the heading, wrapped to a width. */
    protected abstract Lines lines(Frame frame, int width);

    /** Its keys besides those that scroll. */
    protected List<Binding> ownKeys() {
        return List.of();
    }

    @Override
    public final List<Binding> keys() {
        List<Binding> keys = new java.util.ArrayList<>(ownKeys());
        keys.addAll(scrolling());
        return List.copyOf(keys);
    }

    /** The keys that scroll, the same on each such page. */
    final List<Binding> scrolling() {
        List<Binding> keys = new java.util.ArrayList<>();
        keys.add(Binding.moves(KeyPress.Kind.DOWN, all > rows ? "scroll" : "", "Scroll down", () -> scroll(1)));
        keys.add(Binding.moves(KeyPress.Kind.UP, "", "Scroll up", () -> scroll(-1)));
        keys.add(Binding.moves(KeyPress.Kind.PAGE_DOWN, "", "Scroll a page down", () -> scroll(rows - 1)));
        keys.add(Binding.moves(KeyPress.Kind.PAGE_UP, "", "Scroll a page up", () -> scroll(1 - rows)));
        keys.add(Binding.moves(KeyPress.Kind.HOME, "", "To the top", () -> scroll(-all)));
        keys.add(Binding.moves(KeyPress.Kind.END, "", "To the bottom", () -> scroll(all)));
        return List.copyOf(keys);
    }

    @Override
    public void opened(Frame frame) {
        top();
    }

    /** Back to the first line. */
    protected final void top() {
        top = 0;
    }

    /** How many lines, from the first on, reach to the bottom of what is shown. */
    protected final int reach() {
        return top + rows;
    }

    private void scroll(int by) {
        top = Math.max(0, Math.min(all - rows, top + by));
    }

    @Override
    public final void draw(Picture body, Frame frame) {
        Lines lines = lines(frame, body.width());
        body.heading(0, 0, body.width(), heading(frame));
        all = lines.size();
        rows = Math.max(1, body.height() - 1);
        scroll(0);
        lines.drawUnder(body, 0, top, body.height() - 1);
    }

    /** The heading; the title in capitals where nothing more is said. */
    protected String heading(Frame frame) {
        return title().toUpperCase(java.util.Locale.ROOT);
    }
}
