package bywash.tui.report;

import bywash.rules.event.OperatorEntry;
import bywash.rules.prevention.Suggestion;
import bywash.rules.response.ResponseSheet;
import bywash.rules.response.SheetStep;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The measures of one incident: steps done and open, what the readings rule out, and what would prevent the next. */
final class MeasureSection implements Section {
    private static final String DEFAULT_NOTE = "";

    private final Span span;

    MeasureSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading("Measures"));
        Table table = steps(Times.LOCAL);
        blocks.add(
                table.rows().isEmpty()
                        ? new Block.Paragraph("No step of a response sheet was ticked.")
                        : new Block.Grid(table));
        sheet().ifPresent(sheet -> {
            if (!sheet.rulesOut().isEmpty()) {
                blocks.add(new Block.Heading("What the readings rule out"));
                sheet.rulesOut().forEach(w -> blocks.add(new Block.Paragraph(Cells.text(w))));
            }
        });
        List<Suggestion> suggestions = suggestions();
        if (!suggestions.isEmpty()) {
            blocks.add(new Block.Heading("What would prevent the next"));
            suggestions.forEach(s -> blocks.add(new Block.Paragraph(Cells.text(s.what() + " " + s.why()))));
        }
        return blocks;
    }

    @Override
    public List<Table> tables() {
        return List.of(steps(Times.FULL));
    }

    /** The sheet of this incident; of those played anew, the one that began nearest, where its name differs. */
    private Optional<ResponseSheet> sheet() {
        List<ResponseSheet> sheets = span.account().care().sheets();
        Optional<ResponseSheet> same = sheets.stream()
                .filter(s -> s.incident().equals(span.incident()))
                .findFirst();
        if (same.isPresent() || span.spells().isEmpty()) {
            return same;
        }
        Instant began = span.spells().get(0).raised().at();
        return sheets.stream()
                .filter(s -> Math.abs(s.began().getEpochSecond() - began.getEpochSecond()) < 1800)
                .min(Comparator.comparing(s -> Math.abs(s.began().getEpochSecond() - began.getEpochSecond())));
    }

    private List<Suggestion> suggestions() {
        return span.account().care().suggestions().stream()
                .filter(s -> s.incidents().isEmpty() || s.incidents().contains(String.valueOf(span.incident())))
                .toList();
    }

    private Table steps(Times times) {
        Table.Builder table = new Table.Builder("steps", "step", "what", "done", "note");
        List<OperatorEntry.StepDone> ticks = span.account().entries().stream()
                .filter(OperatorEntry.StepDone.class::isInstance)
                .map(OperatorEntry.StepDone.class::cast)
                .filter(t -> t.incident().equals(span.incident()))
                .toList();
        List<SheetStep> steps = sheet().map(ResponseSheet::steps).orElse(List.of());
        for (SheetStep step : steps) {
            OperatorEntry.StepDone tick = ticks.stream()
                    .filter(t -> t.step().equals(step.id()))
                    .reduce((a, b) -> b)
                    .orElse(null);
            String note = tick != null ? tick.note() : step.doneAt() != null ? step.note() : DEFAULT_NOTE;
            Instant done = tick != null ? tick.at() : step.doneAt();
            table.row(
                    step.id(),
                    Cells.text(step.words()),
                    done == null ? "not ticked" : times.of(done, span.zone()),
                    Cells.text(note));
        }
        for (OperatorEntry.StepDone tick : ticks) {
            if (steps.stream().noneMatch(s -> s.id().equals(tick.step()))) {
                table.row(Cells.text(tick.step()), "", times.of(tick.at(), span.zone()), Cells.text(tick.note()));
            }
        }
        return table.build();
    }
}
