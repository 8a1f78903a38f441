package bywash.tui.sheet;

import bywash.ingest.text.PlainText;
import bywash.rules.response.ResponseSheet;
import bywash.rules.response.SheetEvent;
import bywash.rules.response.SheetStep;
import bywash.rules.site.Units;
import bywash.tui.view.UsWords;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** One sheet, section by section; Markdown and text differ in their marks alone. */
final class SheetWriter {
    private static final int WIDTH = 78;
    private static final int LONGEST = 2000;
    private static final String MARKED = "\\`*_{}[]<>()#+!|~";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private final ResponseSheet sheet;
    private final ZoneId zone;
    private final Units units;
    private final boolean markdown;
    private final StringBuilder out = new StringBuilder();

    SheetWriter(ResponseSheet sheet, ZoneId zone, Units units, boolean markdown) {
        this.sheet = sheet;
        this.zone = zone;
        this.units = units;
        this.markdown = markdown;
    }

    String write() {
        title("Response sheet: " + sheet.site());
        pair("Incident", sheet.incident());
        pair("Began", time(sheet.began()));
        pair("Ended", sheet.ended() == null ? "not yet" : time(sheet.ended()));
        pair("As of", time(sheet.asOf()) + " (" + zone + ")");
        section("Water");
        items(sheet.water(), "No litres could be told.");
        section("Chlorine, estimated");
        items(sheet.residual(), "Nothing is known.");
        section("What the readings rule out");
        items(sheet.rulesOut(), "Nothing.");
        section("What to do, in order");
        int number = 1;
        for (SheetStep step : sheet.steps()) {
            step(number++, step);
        }
        section("What happened");
        for (SheetEvent event : sheet.events()) {
            item("- ", time(event.at()) + " " + UsWords.water(event.words(), units));
        }
        section("Cautions");
        items(sheet.cautions(), "");
        return out.toString();
    }

    private void title(String words) {
        if (markdown) {
            out.append("# ").append(safe(words)).append("\n\n");
        } else {
            String plain = safe(words).toUpperCase(Locale.ROOT);
            out.append(plain).append('\n').append("=".repeat(plain.length())).append("\n\n");
        }
    }

    private void section(String words) {
        out.append('\n')
                .append(markdown ? "## " + words : words.toUpperCase(Locale.ROOT))
                .append('\n');
        out.append(markdown ? "\n" : "");
    }

    private void pair(String name, String value) {
        if (markdown) {
            out.append("- **").append(name).append(":** ").append(safe(value)).append('\n');
        } else {
            wrap(name + " ".repeat(Math.max(1, 10 - name.length())), safe(value));
        }
    }

    private void items(List<String> items, String none) {
        if (items.isEmpty() && !none.isEmpty()) {
            item("- ", none);
        }
        items.forEach(words -> item("- ", UsWords.water(words, units)));
    }

    private void item(String mark, String words) {
        if (markdown) {
            out.append(mark).append(safe(words)).append('\n');
        } else {
            wrap(mark, safe(words));
        }
    }

    private void step(int number, SheetStep step) {
        String tick = step.doneAt() == null ? "[ ] " : "[x] ";
        String mark = markdown ? number + ". " + tick : tick + number + ". ";
        item(mark, UsWords.water(step.words(), units));
        String pad = markdown ? "   - " : " ".repeat(mark.length());
        String done = done(step.doneAt(), step.note());
        if (!done.isEmpty()) {
            item(pad, "Done " + done);
        }
        if (!step.caution().isEmpty() && step.doneAt() == null) {
            item(pad, "Mind: " + step.caution());
        }
    }

    private String done(@Nullable Instant at, String note) {
        return at == null ? "" : time(at) + (note.isEmpty() ? "" : ": " + note);
    }

    private String time(@Nullable Instant at) {
        return at == null ? "" : TIME.format(at.atZone(zone));
    }

    private String safe(String words) {
        String plain = PlainText.of(words, LONGEST);
        if (!markdown) {
            return plain;
        }
        StringBuilder escaped = new StringBuilder();
        for (char c : plain.toCharArray()) {
            escaped.append(MARKED.indexOf(c) >= 0 ? "\\" : "").append(c);
        }
        return escaped.toString();
    }

    /** Words within the width; further lines stand under the first. */
    private void wrap(String mark, String words) {
        String pad = " ".repeat(mark.length());
        StringBuilder line = new StringBuilder(mark);
        boolean empty = true;
        for (String word : words.strip().split("\\s+", -1)) {
            if (!empty && line.length() + 1 + word.length() > WIDTH) {
                out.append(line.toString().stripTrailing()).append('\n');
                line = new StringBuilder(pad);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }
}
