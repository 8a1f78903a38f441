package bywash.tui.report;

import bywash.rules.event.OperatorEntry;
import bywash.tui.account.ResidualPoint;
import bywash.tui.view.TestKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tests with a kit; beside a chlorine test of the system the estimate that stood at that time. */
final class TestSection implements Section {
    private final Span span;

    TestSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        Table table = table(Times.LOCAL);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading("Tests"));
        blocks.add(
                table.rows().isEmpty()
                        ? new Block.Paragraph("Nothing was tested in this time.")
                        : new Block.Grid(table));
        return blocks;
    }

    @Override
    public List<Table> tables() {
        return List.of(table(Times.FULL));
    }

    private Table table(Times times) {
        Table.Builder table = new Table.Builder("tests", "time", "vessel", "quantity", "value", "unit", "estimate then")
                .numbers("value");
        for (OperatorEntry e : span.account().entries()) {
            if (e instanceof OperatorEntry.WaterTest t) {
                Optional<TestKind> kind = TestKind.of(t.quantity());
                table.row(
                        times.of(t.at(), span.zone()),
                        Cells.text(t.vessel()),
                        kind.map(TestKind::label).orElse(Cells.text(t.quantity())),
                        Cells.number(t.value(), 3),
                        kind.map(k -> k == TestKind.TEMPERATURE ? "Cel" : k.unit(span.units()))
                                .orElse(""),
                        estimate(t));
            }
        }
        return table.build();
    }

    private String estimate(OperatorEntry.WaterTest t) {
        boolean reserve = span.site().vessel(t.vessel()).stream()
                .noneMatch(v -> v.role() != bywash.rules.site.VesselRole.RESERVE);
        ResidualPoint p = span.account().residualAt(t.at());
        if (!t.quantity().equals(TestKind.TOTAL_CHLORINE.word()) || reserve || p == null) {
            return "";
        }
        return Cells.number(p.likelyUgL() / 1000, 3) + " (" + Cells.number(p.lowUgL() / 1000, 3) + " to "
                + Cells.number(p.highUgL() / 1000, 3) + ") mg/L";
    }
}
