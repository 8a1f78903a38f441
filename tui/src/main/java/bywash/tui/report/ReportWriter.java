package bywash.tui.report;

import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.report.Block.Plot;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;

/** Writes a report as Markdown (CommonMark with pipe tables), and its tables as CSV (RFC 4180, but lines end in LF). */
public final class ReportWriter {
    private ReportWriter() {}

    /** The whole report as one text. */
    public static String markdown(SeasonReport report) {
        StringBuilder text = new StringBuilder("# " + escaped(report.title()) + "\n");
        for (Block block : report.blocks()) {
            text.append('\n').append(markdown(block)).append('\n');
        }
        return text.toString();
    }

    private static String markdown(Block block) {
        if (block instanceof Heading heading) {
            return "## " + escaped(heading.text());
        }
        if (block instanceof Paragraph paragraph) {
            return escaped(paragraph.text());
        }
        if (block instanceof Grid grid) {
            return markdown(grid.table());
        }
        Plot plot = (Plot) block;
        return escaped(plot.title()) + "\n\n```text\n" + plot.lines() + "\n```";
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
    private static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean markup = "\\`*_|<>[]#".indexOf(c) >= 0;
            out.append(markup ? "\\" : "").append(c);
        }
        return out.toString();
    }

    /** Writes each table to {@code name.csv} in a folder, which is made; returns the files in order. */
    public static List<Path> csv(SeasonReport report, Path folder) throws IOException {
        Files.createDirectories(folder);
        List<Path> files = new ArrayList<>();
        for (Table table : report.tables()) {
            Path file = folder.resolve(table.name() + ".csv");
            Files.writeString(file, csv(table));
            files.add(file);
        }
        return files;
    }

    static String csv(Table table) {
        StringBuilder text = new StringBuilder(line(table.columns()));
        table.rows().forEach(r -> text.append(line(r)));
        return text.toString();
    }

    private static String line(List<String> cells) {
        return cells.stream().map(ReportWriter::cell).collect(Collectors.joining(",")) + "\n";
    }

    /** Quoted where needed; a text that a spreadsheet would take for a formula gets a quote mark before it. */
    private static String cell(String text) {
        boolean number = text.matches("[-+]?[0-9.]+");
        String safe = !number && text.matches("(?s)[=+@\\-].*") ? "'" + text : text;
        return safe.matches("(?s).*[\",\n\r].*") ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
    }
}
