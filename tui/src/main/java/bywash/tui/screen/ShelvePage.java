package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.tui.view.EntryForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.Stories;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Sets an alarm aside for some hours, or takes it off the shelf. */
final class ShelvePage extends FormPage {
    private final AlarmChoice choice;

    ShelvePage(AlarmChoice choice) {
        super("Shelve", "Set an alarm aside for some hours, or take it back");
        this.choice = choice;
    }

    @Override
    public String shut(Frame frame) {
        return frame.snapshot().alarms().isEmpty() ? "No alarm stands that could be shelved." : "";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice(
                        "Alarm",
                        Stories.alarms(frame).stream().map(EntryForms::name).toList()),
                Field.choice("Hours", List.of("1", "2", "4", "8", "12", "24")));
    }

    @Override
    protected @Nullable String preset(Frame frame, int field) {
        AlarmView alarm = choice.alarm(frame);
        return field == 0 && alarm != null ? EntryForms.name(alarm) : null;
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return EntryForms.shelve(frame, filled);
    }
}
