package bywash.tui.report;

import bywash.rules.site.Units;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.view.UsWords;
import bywash.tui.view.UsWords.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Blocks and tables in US units where the site chose them: by the unit in a column's name or in a row's unit. */
final class UsTables {
    /** Weighed on a small scale or reckoned as a chemical: these stay in grams. */
    private static final Set<String> CHEMICAL =
            Set.of("ammonia nitrogen g", "in all, g", "nitrogen g, low", "nitrogen g, high", "protein g");

    private static final Pattern END = Pattern.compile("(.*) (g|kg|m2|L)");
    private static final Set<String> READ = Set.of("lowest", "mean", "highest", "low", "high", "first", "last");

    private UsTables() {}

    static Block of(Block block, Units units) {
        if (units == Units.METRIC) {
            return block;
        }
        return switch (block.kind()) {
            case PARAGRAPH -> new Paragraph(UsWords.of(((Paragraph) block).text(), units));
            case GRID -> new Grid(of(((Grid) block).table(), units));
            case HEADING, PLOT -> block;
        };
    }

    static Table of(Table table, Units units) {
        if (units == Units.METRIC) {
            return table;
        }
        List<String> columns = new ArrayList<>();
        for (String column : table.columns()) {
            String unit = unit(column);
            Shown shown = unit == null ? null : UsWords.shown(0, unit);
            columns.add(
                    shown == null || unit == null
                            ? column
                            : column.substring(0, column.length() - unit.length()) + shown.unit());
        }
        List<List<String>> rows =
                table.rows().stream().map(row -> row(table.columns(), row)).toList();
        return new Table(table.name(), columns, rows);
    }

    private static @Nullable String unit(String column) {
        Matcher end = END.matcher(column);
        return end.matches() && !CHEMICAL.contains(column) ? end.group(2) : null;
    }

    private static List<String> row(List<String> columns, List<String> row) {
        int unitAt = columns.indexOf("unit");
        String rowUnit = unitAt < 0 ? "" : row.get(unitAt);
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            String unit = unit(columns.get(i));
            if (unit == null && READ.contains(columns.get(i))) {
                unit = rowUnit;
            }
            cells.add(unit == null ? UsWords.of(row.get(i), Units.US) : converted(row.get(i), unit));
        }
        Shown named = UsWords.shown(0, rowUnit);
        if (unitAt >= 0 && named != null) {
            cells.set(unitAt, named.unit());
        }
        return cells;
    }

    /** With as many decimals as it had. */
    private static String converted(String cell, String unit) {
        if (!cell.matches("-?\\d+(\\.\\d+)?")) {
            return cell;
        }
        Shown shown = UsWords.shown(Double.parseDouble(cell), unit);
        int decimals = cell.contains(".") ? cell.length() - cell.indexOf('.') - 1 : 0;
        int least = unit.equals("g") ? 1 : unit.equals("kg/m3") ? 2 : 0;
        return shown == null ? cell : Cells.number(shown.value(), Math.max(least, decimals));
    }
}
