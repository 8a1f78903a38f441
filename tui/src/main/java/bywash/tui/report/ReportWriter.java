package bywash.tui.report;

import bywash.ingest.text.PlainText;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.report.Block.Plot;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Writes a report as Markdown (CommonMark with pipe tables), its tables as CSV (RFC 4180, but lines end in LF) and as JSON.
 * Whatever names and notes hold, it is only read: control characters, marks that turn text and line ends become blanks here.
 */
public final class ReportWriter {
    private static final int LONGEST = 20_000;

    private ReportWriter() {}

    /** The whole report as one text. */
    public static String markdown(Report report) {
        StringBuilder text = new StringBuilder("# " + escaped(report.title()) + "\n");
        for (Block block : report.blocks()) {
            text.append('\n').append(markdown(block)).append('\n');
        }
        return text.toString();
    }

    private static String markdown(Block block) {
        return switch (block.kind()) {
            case HEADING -> "## " + escaped(((Heading) block).text());
            case PARAGRAPH -> escaped(((Paragraph) block).text());
            case GRID -> markdown(((Grid) block).table());
            case PLOT -> markdown((Plot) block);
        };
    }

    private static String markdown(Plot plot) {
        String lines = plot.lines().lines().map(ReportWriter::plain).collect(Collectors.joining("\n"));
        return escaped(plot.title()) + "\n\n```text\n" + lines + "\n```";
    }

    private static String markdown(Table table) {
        List<String> lines = new ArrayList<>();
        lines.add(row(table.columns()));
        lines.add(row(Collections.nCopies(table.columns().size(), "---")));
        table.rows().forEach(r -> lines.add(row(r)));
        return String.join("\n", lines);
    }

    private static String row(List<String> cells) {
        return cells.stream().map(c -> c.equals("---") ? c : escaped(c)).collect(Collectors.joining(" | ", "| ", " |"));
    }

    /** What was typed must not become markup. */
    private static String escaped(String typed) {
        String text = plain(typed);
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean markup = "\\`*_|<>[]#&".indexOf(c) >= 0;
            out.append(markup ? "\\" : "").append(c);
        }
        return out.toString();
    }

    private static String plain(String text) {
        return PlainText.of(text, LONGEST);
    }

    /** Writes each table to {@code name.csv} in a folder, which is made; returns the files in order. */
    public static List<Path> csv(Report report, Path folder) throws IOException {
        Files.createDirectories(folder);
        List<Path> files = new ArrayList<>();
        for (Table table : report.tables()) {
            Path file = folder.resolve(table.name() + ".csv");
            Files.writeString(file, csv(table));
            files.add(file);
        }
        return files;
    }

    /** Head and tables as one JSON object; each table is an array of objects with its columns as keys, nothing as null. */
    public static String json(Report report) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            for (Map.Entry<String, String> e : report.head().entrySet()) {
                json.writeStringField(e.getKey(), e.getValue());
            }
            for (Table table : report.tables()) {
                json.writeArrayFieldStart(table.name());
                for (List<String> row : table.rows()) {
                    object(json, table, row);
                }
                json.writeEndArray();
            }
            json.writeEndObject();
        }
        return PlainText.escaped(text.append('\n').toString());
    }

    private static void object(JsonGenerator json, Table table, List<String> row) throws IOException {
        json.writeStartObject();
        for (int i = 0; i < row.size(); i++) {
            String column = table.columns().get(i);
            String cell = row.get(i);
            json.writeFieldName(column);
            if (cell.isEmpty()) {
                json.writeNull();
            } else if (table.numbers().contains(column) && Table.isNumber(cell)) {
                json.writeNumber(new BigDecimal(cell));
            } else {
                json.writeString(cell);
            }
        }
        json.writeEndObject();
    }

    static String csv(Table table) {
        StringBuilder text = new StringBuilder(line(table.columns()));
        table.rows().forEach(r -> text.append(line(r)));
        return text.toString();
    }

    private static String line(List<String> cells) {
        return cells.stream().map(ReportWriter::cell).collect(Collectors.joining(",")) + "\n";
    }

    /**
     * Quoted where needed; a text that a spreadsheet would take for a formula gets a quote mark before it. Its first sign is
     * what OWASP's page on CSV injection names, the wide forms too, also behind blanks.
     */
    private static String cell(String typed) {
        String text = plain(typed);
        boolean number = text.matches("[-+]?[0-9.]+");
        String safe = !number && text.matches("\\s*[=+@\\-\uff1d\uff0b\uff0d\uff20].*") ? "'" + text : text;
        return safe.matches(".*[\",].*") ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
    }
}
