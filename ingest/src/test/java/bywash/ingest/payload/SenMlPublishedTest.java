package bywash.ingest.payload;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.site.Dimension;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The examples and the unit registry of RFC 8428, as published; the files say where they come from. */
class SenMlPublishedTest {
    private static List<List<String>> rows(String file) throws IOException {
        try (InputStream in =
                Objects.requireNonNull(SenMlPublishedTest.class.getResourceAsStream("/published/" + file))) {
            return new String(in.readAllBytes(), UTF_8)
                    .lines()
                    .filter(l -> !l.startsWith("#"))
                    .skip(1)
                    .map(SenMlPublishedTest::cells)
                    .toList();
        }
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
                cell.append(quoted && !cell.isEmpty() ? "\"" : "");
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    @Test
    void resolvesThePublishedExamples() throws Exception {
        List<List<String>> rows = rows("senml_resolution.csv");
        assertEquals(27, rows.size());
        List<SenMlRecord> pack = List.of();
        for (List<String> row : rows) {
            if (!row.get(2).isEmpty()) {
                pack = SenMlPack.read(row.get(2).getBytes(UTF_8));
            }
            SenMlRecord record = pack.get(Integer.parseInt(row.get(1)));
            assertEquals(row.get(3), record.name());
            assertEquals(row.get(4), record.unit() == null ? "" : record.unit());
            assertEquals(Double.parseDouble(row.get(5).replace("now+", "")), record.time(), 1e-6, row.toString());
            switch (row.get(6)) {
                case "v" -> assertEquals(Double.parseDouble(row.get(7)), record.number());
                case "vs" -> assertEquals(row.get(7), record.text());
                case "vb" -> assertEquals(Boolean.valueOf(row.get(7)), record.flag());
                default -> assertTrue(Double.isNaN(record.number()));
            }
        }
    }

    @Test
    void convertsTheRegisteredUnits() throws Exception {
        List<List<String>> rows = rows("senml_units.csv");
        assertEquals(30, rows.size());
        int converted = 0;
        for (List<String> row : rows) {
            Dimension dimension = Dimension.of(row.get(0));
            if (dimension != null && !row.get(4).isEmpty() && dimension.allows(row.get(3))) {
                double primary = Double.parseDouble(row.get(4)) * 2 + Double.parseDouble(row.get(5));
                double expected = dimension.toFixed(primary, row.get(3));
                assertEquals(expected, dimension.toFixed(2, row.get(0)), Math.abs(expected) * 1e-12, row.toString());
                converted++;
            }
            if (List.of("pH", "temperature", "ORP", "level", "flow", "conductivity")
                    .contains(row.get(6))) {
                assertNotNull(dimension, row.toString());
            }
        }
        assertEquals(10, converted);
    }
}
