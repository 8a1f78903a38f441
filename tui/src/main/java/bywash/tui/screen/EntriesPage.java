package bywash.tui.screen;

import bywash.tui.view.Frame;
import java.util.List;

/** The forms to enter something with, to choose from. */
final class EntriesPage implements Page {
    private static final int TEXT = 20;

    private final List<Page> forms;
    private int chosen;

    EntriesPage(List<Page> forms) {
        this.forms = List.copyOf(forms);
    }

    @Override
    public String title() {
        return "New entry";
    }

    @Override
    public String purpose() {
        return "Enter tests, feed, fish, beds, doses, probes, notes; take an entry back";
    }

    @Override
    public Character letter() {
        return 'n';
    }

    @Override
    public List<Binding> keys() {
        return List.of(
                Binding.of(
                                KeyPress.Kind.ENTER,
                                "open",
                                "Open the chosen form",
                                f -> new Effect.Open(forms.get(chosen).getClass()))
                        .or(KeyPress.of(KeyPress.Kind.RIGHT)),
                Binding.moves(KeyPress.Kind.DOWN, "next", "The next form", () -> move(1)),
                Binding.moves(KeyPress.Kind.UP, "", "The form before", () -> move(-1)));
    }

    private void move(int by) {
        chosen = Math.floorMod(chosen + by, forms.size());
    }

    @Override
    public void draw(Picture body, Frame frame) {
        body.heading(0, 0, body.width(), "NEW ENTRY");
        int rows = body.height() - 1;
        int from = Math.max(0, Math.min(chosen - rows + 1, forms.size() - rows));
        for (int i = from; i < forms.size() && i - from < rows; i++) {
            Page form = forms.get(i);
            String pointer = i == chosen ? String.valueOf(body.glyphs().pointer()) : " ";
            String name = pointer + " " + form.title();
            String line = name + " ".repeat(Math.max(1, TEXT - name.length())) + form.purpose();
            body.put(1 + i - from, 0, body.width(), line, i == chosen ? Style.SELECTED : Style.PLAIN);
        }
    }
}
