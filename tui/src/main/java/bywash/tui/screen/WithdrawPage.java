package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.Withdrawals;
import java.util.List;

/** Takes a mistaken entry back. */
final class WithdrawPage extends FormPage {
    WithdrawPage() {
        super("Take back", "An entry that was a mistake counts no more");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(Field.choice("Entry", Withdrawals.from(frame).words(frame)), Field.text("Why"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return Withdrawals.check(frame, filled);
    }
}
