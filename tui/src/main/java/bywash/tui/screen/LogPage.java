package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.LogFilter;
import bywash.tui.view.LogLine;
import bywash.tui.view.Words;
import java.util.List;

/** What happened and what was entered, newest first, with a filter. */
final class LogPage extends ScrollPage {
    private static final int TEXT = 17;

    private LogFilter filter = LogFilter.ALL;
    private boolean searching;

    @Override
    public String title() {
        return "Log";
    }

    @Override
    public String purpose() {
        return "What happened and what was entered, newest first";
    }

    @Override
    public Character letter() {
        return 'l';
    }

    @Override
    protected String heading(Frame frame) {
        String search = filter.words().isEmpty() && !searching ? "" : ", with \"" + filter.words() + "\"";
        return "LOG  " + filter.kind().word() + search + (searching ? "  (type, then Enter)" : "");
    }

    @Override
    protected List<Binding> ownKeys() {
        if (searching) {
            return List.of(
                    Binding.moves(KeyPress.Kind.ENTER, "keep", "Keep what is searched for", () -> searching = false),
                    Binding.moves(KeyPress.Kind.BACKSPACE, "", "Erase the last character typed", this::erase));
        }
        return List.of(
                Binding.moves(
                        KeyPress.Kind.TAB, "filter", "Alarms and entries, alarms raised, alarms, entries", this::turn),
                Binding.moves(KeyPress.Kind.ENTER, "search", "Search for a word: type it, then Enter", this::search));
    }

    private void turn() {
        filter = new LogFilter(filter.kind().next(), filter.words());
        top();
    }

    private void search() {
        searching = true;
        filter = new LogFilter(filter.kind(), "");
        top();
    }

    private void erase() {
        String words = filter.words();
        filter = new LogFilter(filter.kind(), words.substring(0, Math.max(0, words.length() - 1)));
    }

    @Override
    public boolean typing() {
        return searching;
    }

    @Override
    public void type(char character) {
        if (searching && character >= ' ' && filter.words().length() < 40) {
            filter = new LogFilter(filter.kind(), filter.words() + character);
        }
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        Lines lines = new Lines(width);
        List<LogLine> log = filter.lines(frame);
        if (log.isEmpty()) {
            return lines.gap().add("Nothing on record that passes the filter.", Style.PLAIN);
        }
        for (LogLine line : log) {
            String mark = line.mark() + " ".repeat(3 - line.mark().length());
            String label = mark + line.when();
            String pad = " ".repeat(Math.max(1, TEXT - label.length()));
            List<String> text = Words.wrap(line.text(), Math.max(8, width - TEXT));
            for (int i = 0; i < text.size(); i++) {
                lines.raw((i == 0 ? label + pad : " ".repeat(TEXT)) + text.get(i), Style.of(line.tone()));
            }
        }
        return lines;
    }
}
