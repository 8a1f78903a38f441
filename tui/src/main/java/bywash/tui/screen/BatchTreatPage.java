package bywash.tui.screen;

import bywash.rules.chlorine.Treatment;
import bywash.rules.text.Names;
import bywash.tui.view.DoseForms;
import bywash.tui.view.EntryForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.Reserves;
import java.util.List;
import java.util.stream.Stream;

/** What is done to the reserve against chlorine. */
final class BatchTreatPage extends FormPage {
    @Override
    public String title() {
        return "Batch treated";
    }

    @Override
    public String purpose() {
        return "What is done to the reserve against chlorine";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Reserve", Reserves.ids(frame)),
                Field.choice(
                                "Treatment",
                                Stream.of(Treatment.values())
                                        .map(Treatment::word)
                                        .toList())
                        .said(Names::words),
                Field.number("Amount", "g"),
                Field.number("Strength", "%"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return EntryForms.batchTreat(frame, filled);
    }

    @Override
    protected int first() {
        return 1;
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        boolean chemical = Treatment.of(filled.text(1)).map(Treatment::chemical).orElse(false);
        return switch (field) {
            case 0 -> Reserves.now(frame, filled.text(0));
            case 3 -> chemical ? DoseForms.strengthHint(filled.text(1)) : "";
            default -> "";
        };
    }
}
