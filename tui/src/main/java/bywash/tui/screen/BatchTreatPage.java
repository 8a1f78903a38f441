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
    BatchTreatPage() {
        super("Batch treated", "What is done to the reserve against chlorine");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Reserve", Reserves.ids(frame)).beside((now, filled) -> Reserves.now(now, filled.text(0))),
                Field.choice(
                                "Treatment",
                                Stream.of(Treatment.values())
                                        .map(Treatment::word)
                                        .toList())
                        .said(Names::words),
                Field.number("Amount", "g"),
                Field.number("Strength", "%").beside((now, filled) -> strength(filled.text(1))));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return EntryForms.batchTreat(frame, filled);
    }

    @Override
    protected int first() {
        return 1;
    }

    private static String strength(String treatment) {
        boolean chemical = Treatment.of(treatment).map(Treatment::chemical).orElse(false);
        return chemical ? DoseForms.strengthHint(treatment) : "";
    }
}
