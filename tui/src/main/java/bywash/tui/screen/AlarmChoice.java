package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.tui.view.AlarmDetail;
import bywash.tui.view.AlarmKey;
import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import bywash.tui.view.Stories;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Which alarm is chosen; shared by the pages that list alarms and the one that shows it in full. */
final class AlarmChoice {
    private @Nullable AlarmKey chosen;
    private int place;

    @Nullable
    AlarmKey key() {
        return chosen;
    }

    /** The chosen alarm; null when none was chosen, or it has returned to normal since. */
    @Nullable
    AlarmView alarm(Frame frame) {
        return frame.snapshot().alarms().stream()
                .filter(a -> AlarmKey.of(a).equals(chosen))
                .findFirst()
                .orElse(null);
    }

    /**
     * Where it stands in the list; where the first thing wrong stands when none was chosen. When the chosen one is gone,
     * what stands in its place.
     */
    int index(Frame frame) {
        List<AlarmView> alarms = Stories.alarms(frame);
        AlarmKey key = chosen == null ? AlarmDetail.firstKey(frame) : chosen;
        for (int i = 0; i < alarms.size(); i++) {
            if (AlarmKey.of(alarms.get(i)).equals(key)) {
                place = i;
                return i;
            }
        }
        return Math.max(0, Math.min(place, alarms.size() - 1));
    }

    /** Keeps the alarm under the pointer chosen, so that one arriving later cannot take its place. */
    void pin(Frame frame) {
        List<AlarmView> alarms = Stories.alarms(frame);
        chosen = alarms.isEmpty() ? null : AlarmKey.of(alarms.get(index(frame)));
    }

    void move(Frame frame, int by) {
        List<AlarmView> alarms = Stories.alarms(frame);
        if (!alarms.isEmpty()) {
            int to = Math.max(0, Math.min(alarms.size() - 1, index(frame) + by));
            chosen = AlarmKey.of(alarms.get(to));
        }
    }

    void nextNew(Frame frame) {
        List<AlarmView> alarms = Stories.alarms(frame);
        int from = index(frame);
        for (int i = 1; i <= alarms.size(); i++) {
            AlarmView alarm = alarms.get((from + i) % alarms.size());
            if (AlarmLine.fresh(alarm)) {
                chosen = AlarmKey.of(alarm);
                return;
            }
        }
    }

    /** Moves by arrow keys and Tab. */
    List<Binding> keys() {
        return List.of(
                Binding.of(KeyPress.Kind.DOWN, "next", "Choose the next alarm", f -> moved(f, 1)),
                Binding.of(KeyPress.Kind.UP, "", "Choose the alarm before", f -> moved(f, -1)),
                Binding.of(KeyPress.Kind.TAB, "", "Choose the next alarm that is not acknowledged", f -> {
                    nextNew(f);
                    return new Effect.Redraw();
                }));
    }

    private Effect moved(Frame frame, int by) {
        move(frame, by);
        return new Effect.Redraw();
    }
}
