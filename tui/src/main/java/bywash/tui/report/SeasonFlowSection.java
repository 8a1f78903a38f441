package bywash.tui.report;

import bywash.rules.site.Units;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.report.Block.Plot;
import bywash.tui.report.SeasonFlows.Move;
import bywash.tui.report.SeasonFlows.Which;
import bywash.tui.view.DisplayUnits;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Litres of a season, in and out, declared and not. */
final class SeasonFlowSection {
    private static final int WEEKS_IN_A_PLOT = 3;

    private final SeasonData data;
    private final DisplayUnits units;
    private final List<Move> moves;

    SeasonFlowSection(SeasonData data) {
        this.data = data;
        this.units = new DisplayUnits(data.site().units());
        this.moves = SeasonFlows.of(data);
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Water in and out"));
        if (moves.isEmpty()) {
            blocks.add(new Paragraph("No top-up was entered, and no water was seen to move that nobody had declared."));
            return blocks;
        }
        blocks.add(new Grid(sums()));
        blocks.add(new Grid(months()));
        plot(blocks, Which.DECLARED, "Declared top-ups, week by week");
        plot(blocks, Which.UNDECLARED, "Water in that nobody had declared, week by week");
        plot(blocks, Which.LOST, "Water lost, week by week");
        blocks.add(new Paragraph(
                "Declared litres are as entered; the others are what the alarm last said, an estimate. What evaporates or"
                        + " moves too slowly to be found is in none of them."));
        return blocks;
    }

    /** Such as {@code 2,800 L declared in, 380 L in that nobody had declared}; empty where no water moved. */
    String glance() {
        List<String> parts = new ArrayList<>();
        part(parts, litres(Which.DECLARED), "declared in");
        part(parts, litres(Which.UNDECLARED) + litres(Which.LEFT_OPEN), "in that nobody had declared");
        part(parts, litres(Which.LOST), "lost");
        return parts.isEmpty() ? "" : " Water: " + String.join(", ", parts) + ".";
    }

    private void part(List<String> parts, double litres, String what) {
        if (litres > 0) {
            parts.add(units.volume(litres) + " " + what);
        }
    }

    private double litres(Which which) {
        return moves.stream()
                .filter(m -> m.which() == which)
                .mapToDouble(Move::litres)
                .sum();
    }

    private Table sums() {
        Map<String, List<Move>> groups = new TreeMap<>();
        for (Move m : moves) {
            groups.computeIfAbsent(m.which().ordinal() + " " + m.vessel() + " " + m.source(), k -> new ArrayList<>())
                    .add(m);
        }
        Table.Builder table =
                new Table.Builder("water-moved", "which", "vessel", "from", "times", "in all L", "largest L");
        for (List<Move> group : groups.values()) {
            Move first = group.get(0);
            table.row(
                    first.which().words(),
                    Cells.text(first.vessel()),
                    Cells.text(first.source()),
                    Cells.count(group.size()),
                    Cells.number(group.stream().mapToDouble(Move::litres).sum(), 0),
                    Cells.number(group.stream().mapToDouble(Move::litres).max().orElse(Double.NaN), 0));
        }
        return table.build();
    }

    private Table months() {
        Map<YearMonth, double[]> sums = new TreeMap<>();
        for (Move m : moves) {
            sums.computeIfAbsent(YearMonth.from(data.day(m.at())), k -> new double[Which.values().length])[
                            m.which().ordinal()] +=
                    m.litres();
        }
        List<String> columns = new ArrayList<>(List.of("month"));
        for (Which which : Which.values()) {
            columns.add(which.words() + " L");
        }
        Table.Builder table = new Table.Builder("water-months", columns.toArray(String[]::new));
        sums.forEach((month, litres) -> {
            List<String> row = new ArrayList<>(List.of(month.toString()));
            for (double l : litres) {
                row.add(Cells.number(l, 0));
            }
            table.row(row.toArray(String[]::new));
        });
        return table.build();
    }

    private void plot(List<Block> blocks, Which which, String title) {
        Map<LocalDate, Double> weeks = new TreeMap<>();
        LocalDate first = data.firstDay().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        for (LocalDate week = first; !week.isAfter(data.lastDay()); week = week.plusDays(7)) {
            weeks.put(week, 0.0);
        }
        for (Move m : moves) {
            if (m.which() == which) {
                LocalDate day = data.day(m.at());
                weeks.merge(first.plusDays(7 * (ChronoUnit.DAYS.between(first, day) / 7)), m.litres(), Double::sum);
            }
        }
        if (weeks.size() < WEEKS_IN_A_PLOT || weeks.values().stream().noneMatch(l -> l > 0)) {
            return;
        }
        boolean us = units.units() == Units.US;
        List<TextPlot.Point> points = new ArrayList<>();
        weeks.forEach((week, litres) -> points.add(new TextPlot.Point(
                week.isBefore(data.firstDay()) ? data.firstDay() : week, us ? litres / units.litres(1) : litres)));
        blocks.add(new Plot(
                String.format(Locale.ROOT, "%s, %s", title, us ? "gal" : "L"),
                TextPlot.of(points, data.firstDay(), data.lastDay(), 0)));
    }

    /** Each of them, for the CSV alone. */
    Table all() {
        Table.Builder table = new Table.Builder("water-moves", "at", "which", "vessel", "from", "volume L");
        for (Move m : moves) {
            table.row(
                    data.when(m.at()),
                    m.which().words(),
                    Cells.text(m.vessel()),
                    Cells.text(m.source()),
                    Cells.number(m.litres(), 0));
        }
        return table.build();
    }
}
