package bywash.tui.screen;

import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.response.ResponseSheet;
import bywash.rules.response.SheetStep;
import bywash.tui.view.Frame;
import bywash.tui.view.IncidentName;
import bywash.tui.view.Passage;
import bywash.tui.view.SheetView;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The response sheet of an incident; a number chooses a step, Enter ticks it. */
final class SheetPage extends PassagePage {
    private static final int MOST_STEPS = 9;

    private @Nullable String incident;
    private int chosen;

    @Override
    public String title() {
        return "Response sheet";
    }

    @Override
    public String purpose() {
        return "An incident: what to do, in order, and what was done";
    }

    @Override
    public Character letter() {
        return 'r';
    }

    @Override
    public void opened(Frame frame) {
        super.opened(frame);
        incident = null;
        chosen = 0;
    }

    @Override
    protected List<Binding> ownKeys() {
        List<Binding> keys = new ArrayList<>();
        keys.add(Binding.of(
                KeyPress.Kind.ENTER, "tick step", "Tick the chosen step, or the first open one", this::tick));
        Binding numbers = Binding.of(
                '1', "choose step", "Choose step 1; with 2, 3, 4, 5, 6, 7, 8 or 9 that step", f -> choose(1));
        keys.add(numbers);
        for (int i = 2; i <= MOST_STEPS; i++) {
            int number = i;
            keys.add(Binding.of((char) ('0' + i), "", "", f -> choose(number)));
        }
        keys.add(Binding.of(KeyPress.Kind.RIGHT, "older", "The incident before", f -> turn(f, 1)));
        keys.add(Binding.of(KeyPress.Kind.LEFT, "", "The incident after", f -> turn(f, -1)));
        return keys;
    }

    private Effect choose(int number) {
        chosen = number;
        return new Effect.Redraw();
    }

    private Effect turn(Frame frame, int by) {
        List<ResponseSheet> sheets = frame.snapshot().care().sheets();
        if (!sheets.isEmpty()) {
            int at = Math.max(0, Math.min(sheets.size() - 1, index(sheets) + by));
            incident = sheets.get(at).incident();
            chosen = 0;
        }
        return new Effect.Redraw();
    }

    private int index(List<ResponseSheet> sheets) {
        for (int i = 0; i < sheets.size(); i++) {
            if (sheets.get(i).incident().equals(incident)) {
                return i;
            }
        }
        return 0;
    }

    private @Nullable ResponseSheet sheet(Frame frame) {
        List<ResponseSheet> sheets = frame.snapshot().care().sheets();
        return sheets.isEmpty() ? null : sheets.get(index(sheets));
    }

    private Effect tick(Frame frame) {
        ResponseSheet sheet = sheet(frame);
        if (sheet == null) {
            return new Effect.Say("There is no incident on record.");
        }
        boolean named = chosen >= 1 && chosen <= sheet.steps().size();
        SheetStep step = named ? sheet.steps().get(chosen - 1) : sheet.next();
        if (step == null || step.doneAt() != null) {
            return new Effect.Say("That is ticked already.");
        }
        chosen = 0;
        return new Effect.Enter(
                List.of(new StepDone(frame.now(), sheet.incident(), step.id(), "")),
                "Ticked: " + step.id() + ".",
                false);
    }

    @Override
    protected String heading(Frame frame) {
        ResponseSheet sheet = sheet(frame);
        List<ResponseSheet> sheets = frame.snapshot().care().sheets();
        return sheet == null
                ? "RESPONSE SHEET"
                : "RESPONSE SHEET " + IncidentName.of(sheet.incident(), frame) + " (" + (index(sheets) + 1) + " of "
                        + sheets.size() + ")";
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        ResponseSheet sheet = sheet(frame);
        if (sheet == null) {
            return List.of(new Passage("", "No incident on record.", bywash.tui.view.Tone.PLAIN));
        }
        SheetStep next = sheet.next();
        int shown = chosen > 0 ? chosen : next == null ? 0 : sheet.steps().indexOf(next) + 1;
        return SheetView.from(sheet, shown, frame);
    }
}
