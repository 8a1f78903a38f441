package bywash.tui.screen;

import bywash.rules.text.Names;
import bywash.tui.view.DoseForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import java.util.List;

/** A chemical added to the loop. */
final class DosePage extends FormPage {
    DosePage() {
        super("Dose", "An acid, a base, ammonia or a dechlorinator to the loop");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Water of", DoseForms.vessels(frame)),
                Field.choice("Reagent", DoseForms.reagents())
                        .said(Names::words)
                        .beside((now, filled) -> DoseForms.last(now, filled.text(1))),
                Field.number("Amount", "g"),
                Field.number("Strength", "%").beside((now, filled) -> DoseForms.strengthHint(filled.text(1))),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return DoseForms.dose(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        String effect = DoseForms.effect(frame, filled);
        String elsewhere =
                "Pellets for the bacteria are entered as feed; what goes into a reserve, as a batch treated.";
        return effect.isEmpty() ? List.of(elsewhere) : List.of(effect, elsewhere);
    }
}
