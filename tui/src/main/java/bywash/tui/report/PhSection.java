package bywash.tui.report;

import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.husbandry.season.PhStatus;
import bywash.rules.text.Names;
import bywash.rules.water.PhReagent;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.report.Block.Plot;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** What moved the pH: doses by month, alkalinity by test, and how it stands at the end. */
final class PhSection {
    private final SeasonData data;

    PhSection(SeasonData data) {
        this.data = data;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("pH and alkalinity"));
        List<TextPlot.Point> alkalinity = data.tests().stream()
                .filter(t -> t.quantity().equals("alkalinity"))
                .map(t -> new TextPlot.Point(data.day(t.at()), t.value()))
                .toList();
        if (alkalinity.size() > 1) {
            blocks.add(new Plot(
                    "Alkalinity by test, mg/L as CaCO3", TextPlot.of(alkalinity, data.firstDay(), data.lastDay(), 0)));
        }
        Table doses = doses();
        if (!doses.rows().isEmpty()) {
            blocks.add(new Grid(doses));
        }
        data.entries().stream()
                .filter(PhAim.class::isInstance)
                .map(PhAim.class::cast)
                .map(a -> new Paragraph(data.when(a.at()) + ": aim " + Cells.number(a.targetPh(), 1) + " by "
                        + Cells.text(Names.words(a.reagent())) + "."))
                .forEach(blocks::add);
        PhStatus ph = data.status().ph();
        blocks.add(new Paragraph("At the end: " + ph.words()));
        PhPlan plan = ph.plan();
        if (plan != null) {
            blocks.add(new Grid(steps(plan)));
            blocks.add(new Paragraph(plan.after()));
            blocks.add(new Paragraph(plan.cautions()));
        }
        return blocks;
    }

    private Table doses() {
        TreeMap<String, double[]> sums = new TreeMap<>();
        data.entries().stream()
                .filter(Dose.class::isInstance)
                .map(Dose.class::cast)
                .filter(d -> PhReagent.of(d.reagent()).isPresent())
                .forEach(d -> {
                    double[] sum = sums.computeIfAbsent(
                            YearMonth.from(data.day(d.at())) + " " + Names.words(d.reagent()), k -> new double[2]);
                    sum[0]++;
                    sum[1] += d.massG();
                });
        Table.Builder table = new Table.Builder("ph-doses", "month", "chemical", "doses", "in all, g");
        sums.forEach((key, s) ->
                table.row(key.substring(0, 7), key.substring(8), Cells.count((long) s[0]), Cells.number(s[1], 0)));
        return table.build();
    }

    private Table steps(PhPlan plan) {
        Table.Builder table = new Table.Builder("ph-plan", "on", plan.means());
        plan.steps().forEach(s -> table.row(data.day(s.doseAt()).toString(), s.words()));
        return table.build();
    }
}
