package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.tui.view.AlarmKey;
import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Acknowledging in two key presses over any page: the first asks, the second says whether all or the chosen one. Only
 * alarms that stood on the screen at the first press are meant; one that comes between the two stays new.
 */
final class Acknowledging {
    private final AlarmChoice choice;
    private List<AlarmKey> asked = List.of();
    private boolean open;

    Acknowledging(AlarmChoice choice) {
        this.choice = choice;
    }

    boolean open() {
        return open;
    }

    void close() {
        open = false;
    }

    Effect ask(Frame frame, boolean chosenIsPinned) {
        if (!chosenIsPinned) {
            choice.pin(frame);
        }
        asked = frame.snapshot().alarms().stream()
                .filter(AlarmLine::fresh)
                .map(AlarmKey::of)
                .toList();
        open = !asked.isEmpty();
        return open ? new Effect.Redraw() : new Effect.Say("Nothing to acknowledge.");
    }

    /** The keys while it asks. */
    List<Binding> keys() {
        return List.of(
                Binding.of('a', "all of them", "Acknowledge all alarms that stood there when asked", this::all),
                Binding.of('i', "its incident", "Acknowledge every alarm of the chosen one's incident", this::incident),
                Binding.of(KeyPress.Kind.ENTER, "the chosen one", "Acknowledge the chosen alarm", this::one),
                Binding.of(KeyPress.Kind.DOWN, "next", "Choose the next alarm", f -> move(f, 1)),
                Binding.of(KeyPress.Kind.UP, "", "Choose the alarm before", f -> move(f, -1)),
                Binding.of(KeyPress.Kind.ESCAPE, "none", "Acknowledge nothing", f -> {
                    close();
                    return new Effect.Redraw();
                }));
    }

    private Effect move(Frame frame, int by) {
        choice.move(frame, by);
        return new Effect.Redraw();
    }

    private Effect all(Frame frame) {
        return enter(asked, frame);
    }

    private Effect incident(Frame frame) {
        AlarmView chosen = choice.alarm(frame);
        if (chosen == null) {
            close();
            return new Effect.Say("No alarm is chosen.");
        }
        Set<AlarmKey> together = frame.snapshot().alarms().stream()
                .filter(a -> a.incident().equals(chosen.incident()))
                .map(AlarmKey::of)
                .collect(Collectors.toSet());
        return enter(asked.stream().filter(together::contains).toList(), frame);
    }

    private Effect enter(List<AlarmKey> keys, Frame frame) {
        close();
        if (keys.isEmpty()) {
            return new Effect.Say("Nothing of this incident to acknowledge.");
        }
        List<OperatorEntry> entries =
                keys.stream().map(key -> entry(key, frame)).toList();
        String words = keys.size() == 1 ? "Acknowledged." : "All " + keys.size() + " acknowledged.";
        return new Effect.Enter(entries, words, false);
    }

    private Effect one(Frame frame) {
        close();
        @Nullable AlarmKey key = choice.key();
        if (key == null) {
            return new Effect.Say("No alarm is chosen.");
        }
        return new Effect.Enter(
                List.of(entry(key, frame)), "Acknowledged: " + key.kind().word() + " " + key.subject() + ".", false);
    }

    private static OperatorEntry entry(AlarmKey key, Frame frame) {
        return new Acknowledge(frame.now(), key.kind().word(), key.subject());
    }
}
