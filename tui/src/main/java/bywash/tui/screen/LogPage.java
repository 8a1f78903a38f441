package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.LogDate;
import bywash.tui.view.LogFilter;
import bywash.tui.view.LogLine;
import bywash.tui.view.LogReach;
import bywash.tui.view.Words;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What happened and what was entered, newest first, as far back as there is a record; with a filter and a date to go to. */
final class LogPage extends ScrollPage {
    private static final int AHEAD = 100;
    private static final int LONGEST = 40;

    /** What letters are for now. */
    private enum Typing {
        NOTHING,
        WORDS,
        DATE
    }

    private final LogReach reach = new LogReach();
    private LogFilter filter = LogFilter.ALL;
    private Typing typing = Typing.NOTHING;
    private String date = "";
    private @Nullable Instant until;

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
    public void opened(Frame frame) {
        super.opened(frame);
        until = null;
        typing = Typing.NOTHING;
    }

    @Override
    protected String heading(Frame frame) {
        if (typing == Typing.DATE) {
            return "LOG  go to date: " + date + "_  (as 2026-05-03 or 05-03, then Enter)";
        }
        Instant end = until;
        String to = end == null ? "" : ", up to " + LogDate.words(end, frame);
        String search = filter.words().isEmpty() && typing == Typing.NOTHING ? "" : ", with \"" + filter.words() + "\"";
        return "LOG  " + filter.kind().word() + to + search + (typing == Typing.WORDS ? "  (type, then Enter)" : "");
    }

    @Override
    protected List<Binding> ownKeys() {
        return switch (typing) {
            case WORDS ->
                List.of(
                        Binding.moves(KeyPress.Kind.ENTER, "keep", "Keep what is searched for", this::settled),
                        Binding.moves(KeyPress.Kind.BACKSPACE, "", "Erase the last character typed", this::erase),
                        Binding.moves(KeyPress.Kind.ESCAPE, "all", "Search for nothing", this::all));
            case DATE ->
                List.of(
                        Binding.of(KeyPress.Kind.ENTER, "go", "Go to the date typed", this::go),
                        Binding.moves(KeyPress.Kind.BACKSPACE, "", "Erase the last character typed", this::erase),
                        Binding.moves(KeyPress.Kind.ESCAPE, "stay", "Go to no date", this::settled));
            case NOTHING ->
                List.of(
                        Binding.moves(
                                KeyPress.Kind.TAB,
                                "filter",
                                "Alarms and entries, alarms raised, alarms, entries",
                                this::turn),
                        Binding.moves(
                                KeyPress.Kind.ENTER,
                                "search",
                                "Search for words: type them, then Enter, or Esc for all",
                                this::search),
                        Binding.moves(
                                KeyPress.of('d'),
                                "date",
                                "Go to a date: type it, then Enter; no date is now",
                                this::ask),
                        Binding.of(KeyPress.Kind.LEFT, "", "A day further back", f -> day(f, -1)),
                        Binding.of(KeyPress.Kind.RIGHT, "", "A day nearer to now", f -> day(f, 1)));
        };
    }

    private void turn() {
        filter = new LogFilter(filter.kind().next(), filter.words());
        top();
    }

    private void search() {
        typing = Typing.WORDS;
        filter = new LogFilter(filter.kind(), "");
        top();
    }

    private void all() {
        typing = Typing.NOTHING;
        filter = new LogFilter(filter.kind(), "");
        top();
    }

    private void ask() {
        typing = Typing.DATE;
        date = "";
    }

    private void settled() {
        typing = Typing.NOTHING;
    }

    private Effect go(Frame frame) {
        typing = Typing.NOTHING;
        if (date.isBlank()) {
            return show(null);
        }
        Instant end = LogDate.end(date, frame);
        return end == null
                ? new Effect.Say(date + " is no date; type year, month and day as 2026-05-03, or 05-03.")
                : show(end.isAfter(frame.at()) ? null : end);
    }

    private Effect day(Frame frame, int by) {
        Instant end = LogDate.moved(until, by, frame);
        return show(end.isAfter(frame.at()) ? null : end);
    }

    private Effect show(@Nullable Instant end) {
        until = end;
        top();
        return new Effect.Redraw();
    }

    private void erase() {
        if (typing == Typing.DATE) {
            date = date.substring(0, Math.max(0, date.length() - 1));
            return;
        }
        String words = filter.words();
        filter = new LogFilter(filter.kind(), words.substring(0, Math.max(0, words.length() - 1)));
    }

    @Override
    public boolean typing() {
        return typing != Typing.NOTHING;
    }

    @Override
    public void type(char character) {
        if (typing == Typing.DATE && "0123456789-".indexOf(character) >= 0 && date.length() < 10) {
            date += character;
        } else if (typing == Typing.WORDS && character >= ' ' && filter.words().length() < LONGEST) {
            filter = new LogFilter(filter.kind(), filter.words() + character);
        }
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        Lines lines = new Lines(width);
        LogReach.Part part = reach.lines(frame, filter, until, reach() + AHEAD);
        if (part.lines().isEmpty()) {
            lines.gap().add("Nothing on record that passes the filter.", Style.PLAIN);
        }
        int indent = LogLine.indent(part.lines());
        for (LogLine line : part.lines()) {
            String mark = line.mark() + " ".repeat(3 - line.mark().length());
            String label = mark + line.when();
            String start = label + " ".repeat(indent - label.length());
            for (String text : Words.wrap(line.text(), Math.max(8, width - indent))) {
                lines.raw(start + text, Style.of(line.tone()));
                start = " ".repeat(indent);
            }
        }
        return part.whole() ? lines.add("   " + reach.beginning(frame), Style.PLAIN) : lines.goesOn();
    }
}
