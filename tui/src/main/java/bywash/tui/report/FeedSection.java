package bywash.tui.report;

import bywash.rules.husbandry.feed.FeedBook;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.feed.FeedWarning;
import bywash.rules.husbandry.season.FeedStatus;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.report.Block.Plot;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;

/** Feed by month, what followed from it, and the plan now. */
final class FeedSection {
    private final SeasonData data;
    private final FeedStatus feed;

    FeedSection(SeasonData data) {
        this.data = data;
        this.feed = data.status().feed();
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Feed"));
        if (feed.days().isEmpty()) {
            blocks.add(new Paragraph("No feed on record."));
            return blocks;
        }
        blocks.add(new Grid(months()));
        blocks.add(new Plot(
                "Feed, " + data.massUnit() + " a day",
                TextPlot.of(
                        feed.days().stream()
                                .map(d -> new TextPlot.Point(d.day(), data.mass(d.feedG())))
                                .toList(),
                        data.firstDay(),
                        data.lastDay(),
                        0)));
        FeedLoad recent = feed.recent();
        if (recent != null) {
            blocks.add(new Paragraph(load(recent)));
        }
        blocks.add(new Paragraph("Plan at the end: " + feed.plan().words()));
        for (FeedWarning warning : feed.warnings()) {
            blocks.add(new Paragraph("Warning: " + warning.what() + " " + warning.why() + " " + warning.act()));
        }
        return blocks;
    }

    private static String load(FeedLoad load) {
        return String.format(
                Locale.ROOT,
                "The last week's %.0f g a day bring %.2f g of ammonia nitrogen and as much nitrate nitrogen, take %.0f to %.0f g of oxygen"
                        + " and %.1f g of alkalinity as CaCO3 a day.",
                load.feedGPerDay(),
                load.tanGPerDay(),
                load.oxygenLowGPerDay(),
                load.oxygenHighGPerDay(),
                load.alkalinityGPerDay());
    }

    private Table months() {
        TreeMap<YearMonth, double[]> sums = new TreeMap<>();
        for (FeedBook.Day day : feed.days()) {
            double[] sum = sums.computeIfAbsent(YearMonth.from(day.day()), m -> new double[3]);
            sum[0]++;
            sum[1] += day.feedG();
            sum[2] += day.proteinG();
        }
        Table.Builder table = new Table.Builder(
                "feed", "month", "days fed", "feed kg", "daily mean g", "protein %", "ammonia nitrogen g");
        sums.forEach((month, s) -> table.row(
                month.toString(),
                Cells.count((long) s[0]),
                Cells.number(s[1] / 1000, 2),
                Cells.number(s[1] / s[0], 0),
                Cells.number(100 * s[2] / s[1], 0),
                Cells.number(s[2] * bywash.rules.water.Nitrification.TAN_PER_PROTEIN, 1)));
        return table.build();
    }

    /** Each day, for the CSV alone. */
    Table daily() {
        Table.Builder table = new Table.Builder("feed-days", "day", "feed g", "protein g");
        feed.days()
                .forEach(d -> table.row(d.day().toString(), Cells.number(d.feedG(), 1), Cells.number(d.proteinG(), 1)));
        return table.build();
    }
}
