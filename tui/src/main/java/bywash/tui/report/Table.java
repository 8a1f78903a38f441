package bywash.tui.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A table.
 *
 * @param name its CSV file's name, without the ending
 * @param columns names with their units
 */
public record Table(String name, List<String> columns, List<List<String>> rows) {
    public Table {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (List<String> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        "table " + name + ": a row of " + row.size() + " for " + columns.size() + " columns: " + row);
            }
        }
    }

    /** Gathers rows. */
    static final class Builder {
        private final String name;
        private final List<String> columns;
        private final List<List<String>> rows = new ArrayList<>();

        Builder(String name, String... columns) {
            this.name = name;
            this.columns = List.of(columns);
        }

        Builder row(String... cells) {
            rows.add(List.of(cells));
            return this;
        }

        Table build() {
            return new Table(name, columns, rows);
        }
    }
}
