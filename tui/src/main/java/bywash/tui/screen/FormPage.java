package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A form: fields filled in one after the other and checked as they are typed. Enter enters it; where there is a warning, a
 * second time.
 */
public abstract class FormPage implements Page {
    private static final int TYPED = 8;
    /** Kept free in the heading for what is above and below. */
    private static final int PLACE = 12;

    private static final int LEAST_CONTENT = 16;

    private final String title;
    private final String purpose;
    private List<Field> fields = List.of();
    private final List<String> texts = new ArrayList<>();
    private int at;
    private boolean warned;

    protected FormPage(String title, String purpose) {
        this.title = title;
        this.purpose = purpose;
    }

    @Override
    public final String title() {
        return title;
    }

    @Override
    public final String purpose() {
        return purpose;
    }

    /** The fields, given anew each time the form is opened. */
    protected abstract List<Field> fields(Frame frame);

    protected abstract FormCheck check(Frame frame, Filled filled);

    /** What is said under the fields, whatever is typed. */
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of();
    }

    /** The field to start in. */
    protected int first() {
        return 0;
    }

    /** What a field holds at first, where that is not its first choice. */
    protected @Nullable String preset(Frame frame, int field) {
        return null;
    }

    @Override
    public @Nullable Character letter() {
        return null;
    }

    @Override
    public void opened(Frame frame) {
        fields = fields(frame);
        texts.clear();
        for (int i = 0; i < fields.size(); i++) {
            String preset = preset(frame, i);
            texts.add(preset == null ? fields.get(i).start() : preset);
        }
        at = first();
        warned = false;
    }

    @Override
    public final List<Binding> keys() {
        List<Binding> keys = new ArrayList<>();
        keys.add(Binding.of(
                KeyPress.Kind.ENTER, "enter", "Enter the form; a warning asks for it a second time", this::enter));
        keys.add(Binding.moves(KeyPress.Kind.DOWN, "next", "Next field", () -> step(1))
                .or(KeyPress.of(KeyPress.Kind.TAB)));
        keys.add(Binding.moves(KeyPress.Kind.UP, "", "Field before", () -> step(-1))
                .or(KeyPress.of(KeyPress.Kind.BACK_TAB)));
        String change = field().kind() == Field.Kind.CHOICE ? "change" : "";
        keys.add(Binding.moves(KeyPress.Kind.RIGHT, change, "Next choice of this field", () -> choose(1)));
        keys.add(Binding.moves(KeyPress.Kind.LEFT, "", "Choice before, of this field", () -> choose(-1)));
        keys.add(Binding.moves(KeyPress.Kind.BACKSPACE, "", "Erase the last character typed", this::erase));
        return keys;
    }

    @Override
    public final boolean typing() {
        return field().kind() == Field.Kind.TEXT || field().kind() == Field.Kind.LIST;
    }

    private Field field() {
        return fields.isEmpty() ? Field.number("", "") : fields.get(at);
    }

    private void step(int by) {
        at = Math.floorMod(at + by, Math.max(1, fields.size()));
    }

    private void choose(int by) {
        change(field().choose(texts.get(at), by));
    }

    private void erase() {
        String text = texts.get(at);
        if (field().kind() != Field.Kind.CHOICE && !text.isEmpty()) {
            change(text.substring(0, text.length() - 1));
        }
    }

    @Override
    public final void type(char character) {
        change(field().type(texts.get(at), character));
    }

    private void change(String text) {
        warned = warned && text.equals(texts.get(at));
        texts.set(at, text);
    }

    private Effect enter(Frame frame) {
        FormCheck check = check(frame, new Filled(texts));
        if (!check.ready()) {
            return new Effect.Say(check.problems().get(0));
        }
        if (!check.warnings().isEmpty() && !warned) {
            warned = true;
            return new Effect.Say("Read the warning; Enter once more enters it all the same.");
        }
        return new Effect.Enter(check.entries(), check.done(), true);
    }

    @Override
    public final void draw(Picture body, Frame frame) {
        if (fields.isEmpty()) {
            opened(frame);
        }
        Filled filled = new Filled(texts);
        int label = fields.stream().mapToInt(f -> f.label().length()).max().orElse(0) + 4;
        int[] columns = {label, label + hintColumn()};
        Lines lines = new Lines(body.width());
        lines.gap();
        int end = 0;
        for (int i = 0; i < fields.size(); i++) {
            String pointer = i == at ? String.valueOf(body.glyphs().pointer()) : " ";
            String hint = fields.get(i).hint().of(frame, filled);
            lines.field(
                    pointer + " " + fields.get(i).label(), columns, content(i, body.width() - label), hint, i == at);
            end = i == at ? lines.size() : end;
        }
        lines.gap();
        said(lines, frame, filled);
        String heading = title().toUpperCase(java.util.Locale.ROOT);
        boolean room = heading.length() + purpose().length() + PLACE <= body.width();
        body.heading(0, 0, body.width(), room ? heading + "  " + purpose() : heading);
        int rows = body.height() - 1;
        int top = Math.max(0, Math.min(end - rows, lines.size() - rows));
        lines.drawUnder(body, 0, top, rows);
    }

    /** Behind the longest field for a number, so that hints stand in one column. */
    private int hintColumn() {
        int longest = LEAST_CONTENT;
        for (Field field : fields) {
            if (field.kind() == Field.Kind.NUMBER) {
                longest = Math.max(longest, TYPED + 3 + field.unit().length());
            }
        }
        return longest + 2;
    }

    private String content(int i, int room) {
        Field field = fields.get(i);
        String text = texts.get(i);
        return switch (field.kind()) {
            case CHOICE -> "< " + (text.isEmpty() ? "none" : field.words().apply(text)) + " >";
            case NUMBER, SIGNED ->
                ("[" + text + " ".repeat(Math.max(0, TYPED - text.length())) + "] " + field.unit()).strip();
            case LIST, TEXT -> "[" + text.substring(Math.max(0, text.length() - Math.max(1, room - 3))) + "_]";
        };
    }

    private void said(Lines lines, Frame frame, Filled filled) {
        int indent = 12;
        FormCheck check = check(frame, filled);
        for (String warning : check.warnings()) {
            lines.add("! ", indent, warning, Style.WARNING);
        }
        for (String problem : check.problems()) {
            lines.add("still open", indent, problem, Style.PLAIN);
        }
        if (check.ready()) {
            boolean twice = !check.warnings().isEmpty() && !warned;
            String how = twice ? "Read the warning, then press Enter twice." : "Enter enters it.";
            lines.add("ready", indent, how, Style.PLAIN);
        }
        List<String> notes = notes(frame, filled);
        if (!notes.isEmpty()) {
            lines.gap();
        }
        notes.forEach(note -> lines.add(note, Style.PLAIN));
    }
}
