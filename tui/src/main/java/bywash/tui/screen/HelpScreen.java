package bywash.tui.screen;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every key, from the key map: one line a command, with the keys and the pages where it works. */
final class HelpScreen {
    private static final int KEYS = 21;

    private static final List<Page> ORDER =
            List.of(Page.OVERVIEW, Page.ACKNOWLEDGE, Page.DETAIL, Page.TOP_UP, Page.END_TOP_UP, Page.HELP, Page.QUIT);

    private HelpScreen() {}

    static void draw(Picture picture, ScreenModel model) {
        picture.heading(0, 0, picture.width(), "KEYS");
        int row = 1;
        for (String line : lines()) {
            picture.put(row++, 0, picture.width(), line, Style.PLAIN);
        }
        if (row < picture.height() - 2) {
            row++;
        }
        Lines notes = new Lines(picture.width());
        notes.add("!! critical, ! high or lower. Estimates are no test: confirm chlorine with a DPD kit.", Style.PLAIN);
        notes.draw(picture, row, 0, Math.max(0, picture.height() - 1 - row), false);
        Bars.keys(picture, model);
    }

    /** One line for each command: its keys, and what it does. */
    static List<String> lines() {
        Map<Command, List<String>> keys = new LinkedHashMap<>();
        for (Page page : ORDER) {
            for (KeyMap.Binding binding : KeyMap.on(page)) {
                List<String> labels = keys.computeIfAbsent(binding.command(), c -> new ArrayList<>());
                if (!labels.contains(binding.key().label())) {
                    labels.add(binding.key().label());
                }
            }
        }
        List<String> lines = new ArrayList<>();
        keys.forEach((command, labels) -> {
            String label = String.join(", ", labels);
            lines.add(label + " ".repeat(Math.max(1, KEYS - label.length())) + command.sentence());
        });
        return lines;
    }
}
