package bywash.tui.report;

import bywash.rules.husbandry.probes.CalibrationResult;
import bywash.rules.husbandry.probes.ProbeCareStatus;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The probes' care: what calibrations found, drift, and what is due. */
final class ProbeSection {
    private final SeasonData data;

    ProbeSection(SeasonData data) {
        this.data = data;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Probes"));
        Table table = calibrations();
        if (!table.rows().isEmpty()) {
            blocks.add(new Grid(table));
        }
        for (ProbeCareStatus care : data.status().probes()) {
            blocks.add(new Paragraph(care.probe() + ": " + Cells.text(care.words()) + "."));
        }
        return blocks;
    }

    private Table calibrations() {
        Table.Builder table = new Table.Builder(
                "calibrations", "probe", "on", "slope %", "offset", "offset unit", "was off by", "verdict");
        for (ProbeCareStatus care : data.status().probes()) {
            for (CalibrationResult c : care.calibrations()) {
                table.row(
                        care.probe(),
                        data.day(c.at()).toString(),
                        Cells.number(c.slopePercent(), 1),
                        Cells.number(c.offset(), 2),
                        c.offsetUnit(),
                        Cells.number(c.error(), 2),
                        c.verdict().name().toLowerCase(Locale.ROOT));
            }
        }
        return table.build();
    }
}
