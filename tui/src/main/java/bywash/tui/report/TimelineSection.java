package bywash.tui.report;

import bywash.ingest.recording.EntryJson;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.tui.account.Gap;
import bywash.tui.view.EntryWords;
import bywash.tui.view.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What happened and what was done, in order of time. */
final class TimelineSection implements Section {
    private record Event(Instant at, String kind, String subject, String words, String incident) {}

    private final Span span;
    private final boolean inText;

    /** @param inText whether the whole stands in the text too */
    TimelineSection(Span span, boolean inText) {
        this.span = span;
        this.inText = inText;
    }

    @Override
    public List<Block> blocks() {
        if (!inText) {
            return List.of();
        }
        Table table = table(Times.LOCAL);
        return List.of(
                new Block.Heading("What happened, and what was done"),
                table.rows().isEmpty()
                        ? new Block.Paragraph("No alarm changed and nothing was entered in this time.")
                        : new Block.Grid(table));
    }

    @Override
    public List<Table> tables() {
        return List.of(table(Times.FULL), entries());
    }

    private List<Event> events(boolean callsAgain) {
        List<Event> events = new ArrayList<>();
        for (AlarmTransition t : span.account().transitions()) {
            if (span.concerns(t.incident()) && (callsAgain || !t.again())) {
                String state = t.again() ? "calls again" : t.state().word();
                events.add(new Event(
                        t.at(),
                        "alarm",
                        t.subject(),
                        t.kind().word() + " " + state + ": " + Cells.text(t.message()),
                        t.incident()));
            }
        }
        for (OperatorEntry e : span.account().entries()) {
            events.add(new Event(e.at(), "entry", "", Cells.text(EntryWords.of(e, span.units())), ""));
        }
        for (Gap g : span.account().gaps()) {
            String words = g.what() + " for " + Words.span(g.from(), g.to());
            events.add(new Event(g.from(), "watch", "", words, ""));
        }
        events.sort(Comparator.comparing(Event::at));
        return events;
    }

    private Table table(Times times) {
        Table.Builder table = new Table.Builder("timeline", "time", "what", "subject", "in words", "incident");
        for (Event e : events(times == Times.FULL)) {
            table.row(times.of(e.at(), span.zone()), e.kind(), Cells.text(e.subject()), e.words(), e.incident());
        }
        Table whole = table.build();
        return times == Times.LOCAL ? whole.without("incident") : whole;
    }

    private Table entries() {
        Table.Builder table = new Table.Builder("entries", "time", "entry", "in words", "as entered");
        for (OperatorEntry e : span.account().entries()) {
            table.row(
                    Times.FULL.of(e.at(), span.zone()),
                    e.word(),
                    Cells.text(EntryWords.of(e, span.units())),
                    Cells.text(EntryJson.toJson(e)));
        }
        return table.build();
    }
}
