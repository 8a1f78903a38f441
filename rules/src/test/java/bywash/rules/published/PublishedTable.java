package bywash.rules.published;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A check table: {@code #} lines that say where the figures come from, a line of column names, then rows. The number of rows is
 * stated by the test, so that none gets lost on the way.
 */
public record PublishedTable(String name, String provenance, List<String> columns, List<Row> rows) {
    /** The mark on figures that were recalled, not read. */
    public static final String FROM_MEMORY = "[from memory";

    /** One row, whose failures name the table and the row. */
    public record Row(String table, List<String> columns, List<String> cells) {
        public String text(String column) {
            int i = columns.indexOf(column);
            assertTrue(i >= 0, table + " has no column " + column);
            return cells.get(i);
        }

        public boolean has(String column) {
            return !text(column).isEmpty();
        }

        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        /** Checks a value against a column, within an absolute tolerance. */
        public void near(String column, double actual, double tolerance) {
            assertEquals(number(column), actual, tolerance, () -> column + " of " + this);
        }

        /** Checks a value against a column, within a share of it. */
        public void nearShare(String column, double actual, double share) {
            near(column, actual, Math.abs(number(column)) * share);
        }

        @Override
        public String toString() {
            return table + " " + columns + " " + cells;
        }
    }

    /** Reads a table and checks how many rows it has. */
    public static PublishedTable read(String name, int rowCount) {
        String path = "/published/" + name + ".csv";
        List<String> lines;
        try (InputStream in = Objects.requireNonNull(PublishedTable.class.getResourceAsStream(path), path)) {
            lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        StringBuilder provenance = new StringBuilder();
        List<String> columns = List.of();
        List<Row> rows = new ArrayList<>();
        for (String line : lines) {
            if (line.startsWith("#")) {
                provenance.append(line).append('\n');
            } else if (columns.isEmpty()) {
                columns = cells(line);
            } else {
                rows.add(new Row(name, columns, cells(line)));
            }
        }
        assertTrue(provenance.length() > 0, name + " says where its figures come from");
        assertEquals(rowCount, rows.size(), "rows of " + name);
        return new PublishedTable(name, provenance.toString(), columns, List.copyOf(rows));
    }

    /** Checks that the header still marks some of its figures as recalled, not read. */
    public PublishedTable markedFromMemory() {
        assertTrue(provenance.contains(FROM_MEMORY), name + " keeps its from-memory mark");
        return this;
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return List.copyOf(cells);
    }
}
