package bywash.tui.screen;

import bywash.tui.view.EntryForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import java.util.List;

/** A note for the record. */
final class NotePage extends FormPage {
    NotePage() {
        super("Note", "A note for the record");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(Field.text("Note"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return EntryForms.note(frame, filled);
    }
}
