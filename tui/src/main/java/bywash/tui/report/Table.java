package bywash.tui.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A table.
 *
 * @param name its CSV file's name, without the ending
 * @param columns names with their units
 * @param numbers columns that hold numbers alone, or nothing
 */
public record Table(String name, List<String> columns, List<List<String>> rows, Set<String> numbers) {
    public Table {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        numbers = Set.copyOf(numbers);
        for (List<String> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        "table " + name + ": a row of " + row.size() + " for " + columns.size() + " columns: " + row);
            }
        }
    }

    /** Of a season, where a column holds numbers when all its cells do. */
    public Table(String name, List<String> columns, List<List<String>> rows) {
        this(name, columns, rows, numbersOf(columns, rows));
    }

    private static Set<String> numbersOf(List<String> columns, List<List<String>> rows) {
        Set<String> numbers = new TreeSet<>();
        for (int i = 0; i < columns.size(); i++) {
            int n = i;
            if (rows.stream().allMatch(r -> r.get(n).isEmpty() || isNumber(r.get(n)))) {
                numbers.add(columns.get(i));
            }
        }
        return numbers;
    }

    /** Whether a cell is a number as JSON writes it. */
    static boolean isNumber(String cell) {
        return cell.matches("-?(0|[1-9][0-9]*)([.][0-9]+)?");
    }

    /** The same without some columns. */
    Table without(String... names) {
        List<String> drop = List.of(names);
        List<Integer> keep = IntStream.range(0, columns.size())
                .filter(i -> !drop.contains(columns.get(i)))
                .boxed()
                .toList();
        return new Table(
                name,
                keep.stream().map(columns::get).toList(),
                rows.stream().map(r -> keep.stream().map(r::get).toList()).toList(),
                numbers);
    }

    /** Gathers rows. */
    static final class Builder {
        private final String name;
        private final List<String> columns;
        private final List<List<String>> rows = new ArrayList<>();
        private @Nullable Set<String> numbers;

        Builder(String name, String... columns) {
            this.name = name;
            this.columns = List.of(columns);
        }

        /** Names the columns that hold numbers. */
        Builder numbers(String... names) {
            numbers = Set.of(names);
            return this;
        }

        Builder row(String... cells) {
            rows.add(List.of(cells));
            return this;
        }

        Table build() {
            return numbers == null ? new Table(name, columns, rows) : new Table(name, columns, rows, numbers);
        }
    }
}
