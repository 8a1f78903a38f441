package bywash.tui.screen;

import bywash.tui.view.AlarmKey;
import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import java.util.LinkedHashSet;
import java.util.Set;

/** Rings once for each alarm that becomes unacknowledged; the grower can silence it. What is new is kept count of anyway. */
final class Bell {
    private Set<AlarmKey> known = Set.of();
    private boolean silent;

    /** Whether to ring now; to be asked once for each frame. */
    boolean rings(Frame frame) {
        Set<AlarmKey> fresh = new LinkedHashSet<>();
        frame.snapshot().alarms().stream()
                .filter(AlarmLine::fresh)
                .map(AlarmKey::of)
                .forEach(fresh::add);
        boolean more = !known.containsAll(fresh);
        known = fresh;
        return more && !silent;
    }

    boolean silent() {
        return silent;
    }

    /** The key that silences it and lets it ring again. */
    Binding key() {
        return Binding.of('k', "", "Silence the bell, or let it ring again", frame -> {
            silent = !silent;
            return new Effect.Say(
                    silent ? "The bell is silent; k lets it ring again." : "The bell rings for new alarms.");
        });
    }
}
