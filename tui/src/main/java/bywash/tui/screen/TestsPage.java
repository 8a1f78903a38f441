package bywash.tui.screen;

import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.TestKind;
import bywash.tui.view.TestSheet;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** By a kit or a meter; leave open what was not tested. */
final class TestsPage extends FormPage {
    TestsPage() {
        super("Tests", "By a kit or a meter; leave open what was not tested");
    }

    @Override
    public Character letter() {
        return 'm';
    }

    @Override
    protected List<Field> fields(Frame frame) {
        List<Field> fields = new ArrayList<>();
        fields.add(Field.choice(
                "Water of",
                frame.snapshot().site().vessels().stream().map(Vessel::id).toList()));
        for (TestKind kind : TestKind.values()) {
            fields.add(Field.number(kind.label(), kind.unit(DisplayUnits.of(frame)))
                    .beside((now, filled) -> TestSheet.hint(now, filled.text(0), kind)));
        }
        fields.add(Field.text("When"));
        return fields;
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return TestSheet.check(frame, filled);
    }

    @Override
    protected @Nullable String preset(Frame frame, int field) {
        return field > 0
                ? null
                : frame.snapshot().site().vessels(VesselRole.FISH_TANK).stream()
                        .map(Vessel::id)
                        .findFirst()
                        .orElse(null);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        List<String> notes = new ArrayList<>(TestSheet.due(frame));
        notes.add("Read the kit as its leaflet says; out of date reagents show too little.");
        return notes;
    }
}
