package bywash.tui.screen;

import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.tui.screen.TopUpForm.Field;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.Frame;
import bywash.tui.view.TopUpCheck;
import bywash.tui.view.TopUpDraft;
import bywash.tui.view.TopUpProgress;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Declaring a top-up. */
final class TopUpPage implements Page {
    private static final int LABEL = 12;

    private @Nullable TopUpForm form;

    @Override
    public String title() {
        return "Top-up";
    }

    @Override
    public String purpose() {
        return "Declare a top-up before water runs";
    }

    @Override
    public Character letter() {
        return 't';
    }

    @Override
    public String barWord() {
        return "top-up";
    }

    @Override
    public String shut(Frame frame) {
        return TopUpProgress.from(frame).running() ? "A top-up is running; end it first." : "";
    }

    @Override
    public void opened(Frame frame) {
        form = TopUpForm.empty(frame.snapshot().site());
    }

    @Override
    public List<Binding> keys() {
        return List.of(
                Binding.of(
                        KeyPress.Kind.ENTER,
                        "declare",
                        "Declare it; a warning asks for it a second time",
                        this::declare),
                edits(KeyPress.Kind.DOWN, "next", "Next field", f -> f.step(1)).or(KeyPress.of(KeyPress.Kind.TAB)),
                edits(KeyPress.Kind.UP, "", "Field before", f -> f.step(-1)).or(KeyPress.of(KeyPress.Kind.BACK_TAB)),
                edits(KeyPress.Kind.RIGHT, "change", "Next choice of this field", f -> f.choose(1)),
                edits(KeyPress.Kind.LEFT, "", "Choice before, of this field", f -> f.choose(-1)),
                edits(KeyPress.Kind.BACKSPACE, "", "Erase the last figure typed", TopUpForm::erase));
    }

    private interface Edit {
        TopUpForm of(TopUpForm form);
    }

    private Binding edits(KeyPress.Kind key, String word, String sentence, Edit edit) {
        return Binding.moves(key, word, sentence, () -> form = form == null ? null : edit.of(form));
    }

    @Override
    public void type(char character) {
        form = form == null ? null : form.type(character);
    }

    private Effect declare(Frame frame) {
        TopUpForm filled = form;
        if (filled == null) {
            return new Effect.Back();
        }
        TopUpCheck check = TopUpCheck.from(frame, filled.draft());
        if (!check.ready()) {
            return new Effect.Say(check.problems().get(0));
        }
        if (!check.warnings().isEmpty() && !filled.warned()) {
            form = filled.confirmWarnings();
            return new Effect.Say("Read the warning; Enter once more declares it all the same.");
        }
        form = null;
        TopUpDraft draft = filled.draft();
        return Effect.entered(
                new TopUpStart(frame.now(), draft.vessel(), draft.source(), check.volumeL(), check.duration()),
                "Top-up declared. Open the valve now.");
    }

    @Override
    public void draw(Picture body, Frame frame) {
        body.heading(0, 0, body.width(), "DECLARE A TOP-UP before water runs");
        TopUpForm form = this.form;
        if (form == null) {
            return;
        }
        TopUpDraft draft = form.draft();
        TopUpCheck check = TopUpCheck.from(frame, draft);
        String unit = new DisplayUnits(frame.snapshot().site().units()).volumeUnit();
        field(body, 2, "Into", choice(draft.vessel()), form.field() == Field.VESSEL);
        field(body, 3, "From", choice(draft.source()), form.field() == Field.SOURCE);
        field(body, 4, "Volume", typed(draft.volume(), unit), form.field() == Field.VOLUME);
        field(body, 5, "Duration", typed(draft.minutes(), "min"), form.field() == Field.DURATION);
        Lines lines = new Lines(body.width());
        for (String warning : check.warnings()) {
            lines.add("! ", LABEL, warning, Style.WARNING);
        }
        for (String problem : check.problems()) {
            lines.add("still open", LABEL, problem, Style.PLAIN);
        }
        if (check.ready()) {
            lines.add("ready", LABEL, "Enter declares it; then open the valve.", Style.PLAIN);
        }
        lines.draw(body, 7, 0, body.height() - 7);
    }

    private static void field(Picture picture, int row, String label, String text, boolean chosen) {
        picture.put(row, 0, chosen ? String.valueOf(picture.glyphs().pointer()) : " ", Style.STRONG);
        picture.put(row, 2, label, Style.STRONG);
        picture.put(row, LABEL, picture.width() - LABEL, text, chosen ? Style.SELECTED : Style.PLAIN);
    }

    private static String choice(String text) {
        return "< " + (text.isEmpty() ? "none" : text) + " >";
    }

    private static String typed(String text, String unit) {
        return "[" + text + " ".repeat(Math.max(0, 7 - text.length())) + "] " + unit;
    }
}
