package bywash.tui.report;

import bywash.rules.alarm.AlarmSpell;
import bywash.rules.event.OperatorEntry;
import bywash.tui.account.Account;
import bywash.tui.account.IncidentEntry;
import bywash.tui.view.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The report of an incident, a day, a month or any other span. */
public final class SpanReport implements Report {
    private static final Duration TIMELINE_IN_TEXT = Duration.ofDays(4);

    private final Span span;
    private final String what;
    private final List<Section> sections;
    private final List<IncidentEntry> incidents;

    private SpanReport(Span span, String what, List<IncidentEntry> incidents, List<Section> sections) {
        this.span = span;
        this.what = what;
        this.incidents = incidents;
        this.sections = sections;
    }

    /** Of one incident. */
    public static SpanReport incident(Account account, IncidentEntry incident) {
        Span span = new Span(account, incident.id());
        return new SpanReport(
                span,
                "Incident " + incident.id(),
                List.of(incident),
                List.of(
                        new TimelineSection(span, true),
                        new AlarmSection(span),
                        new FlowSection(span),
                        new ResidualSection(span),
                        new TestSection(span),
                        new MeasureSection(span),
                        new ReadingSection(span),
                        new GapSection(span)));
    }

    /** @param what such as {@code 2026-05} */
    public static SpanReport span(Account account, String what) {
        Span span = new Span(account, null);
        return new SpanReport(
                span,
                what,
                IncidentEntry.of(account.spells()),
                List.of(
                        new TimelineSection(span, account.span().compareTo(TIMELINE_IN_TEXT) <= 0),
                        new AlarmSection(span),
                        new PerformanceSection(span),
                        new FlowSection(span),
                        new ResidualSection(span),
                        new TestSection(span),
                        new ReadingSection(span),
                        new GapSection(span)));
    }

    @Override
    public String title() {
        return Cells.text(what + ", " + span.site().name());
    }

    @Override
    public Map<String, String> head() {
        Map<String, String> head = new LinkedHashMap<>();
        head.put("report", span.incident() == null ? "span" : "incident");
        head.put("site", span.site().id());
        head.put("of", what);
        head.put("from", Times.FULL.of(span.account().from(), span.zone()));
        head.put("to", Times.FULL.of(span.account().to(), span.zone()));
        return head;
    }

    @Override
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(glance()));
        if (span.incident() == null) {
            blocks.add(new Block.Heading("Incidents"));
            blocks.add(
                    incidents.isEmpty()
                            ? new Block.Paragraph("None.")
                            : new Block.Grid(IncidentTable.of(incidents, span.site(), Times.LOCAL)));
        }
        sections.forEach(s -> blocks.addAll(s.blocks()));
        partly(blocks);
        blocks.add(new Block.Heading("Cautions"));
        blocks.add(new Block.Paragraph("Estimates are no test: confirm chlorine with a DPD kit. Litres and residual are"
                + " worked out anew from the readings on record, the rules taught by the days before; alarms are as they"
                + " were raised. Fish welfare, food safety and discharge follow local rules and licensed practice."));
        return blocks.stream().map(b -> UsTables.of(b, span.site().units())).toList();
    }

    private void partly(List<Block> blocks) {
        Instant from = span.account().reckonedFrom();
        if (from != null && from.isAfter(span.account().from())) {
            blocks.add(new Block.Paragraph("Readings one by one are on record from " + span.local(from)
                    + " on; before that litres and residual are not known, and probes stand with their minutes."));
        }
    }

    @Override
    public List<Table> tables() {
        List<Table> tables = new ArrayList<>();
        tables.add(IncidentTable.of(incidents, span.site(), Times.FULL));
        sections.forEach(s -> tables.addAll(s.tables()));
        return tables;
    }

    private String glance() {
        Account a = span.account();
        List<String> words = new ArrayList<>();
        words.add(span.local(a.from()) + " to " + span.local(a.to()) + " (" + span.zone() + "), "
                + Words.span(a.from(), a.to()) + ".");
        if (span.incident() == null) {
            words.add(count(incidents.size(), "incident") + ", "
                    + count(span.spells().size(), "alarm") + ".");
        } else {
            words.add(story(incidents.get(0)));
        }
        String water = FlowSection.undeclared(span);
        if (!water.isEmpty()) {
            words.add(water);
        }
        if (a.peak() != null) {
            words.add(ResidualSection.peak(span));
        }
        long tests = a.entries().stream()
                .filter(OperatorEntry.WaterTest.class::isInstance)
                .count();
        words.add(count(a.entries().size(), "entry") + " of the grower, " + count(tests, "test") + " among them.");
        if (!a.gaps().isEmpty()) {
            words.add("Part of this time nothing could be seen; see below.");
        }
        return String.join(" ", words);
    }

    private String story(IncidentEntry i) {
        AlarmSpell cause = i.cause();
        @Nullable Instant ended = i.ended();
        String end = ended == null
                ? "and still stands"
                : "and was over at " + span.local(ended) + ", after " + Words.span(i.began(), ended);
        return "It began at " + span.local(i.began()) + " with " + cause.kind().word() + " "
                + Cells.text(cause.subject()) + ", came to " + count(i.spells().size(), "alarm") + " " + end + ". "
                + AlarmSection.answered(i.spells());
    }

    private static String count(long n, String what) {
        String many = what.endsWith("y") ? what.substring(0, what.length() - 1) + "ies" : what + "s";
        return n + " " + (n == 1 ? what : many);
    }
}
