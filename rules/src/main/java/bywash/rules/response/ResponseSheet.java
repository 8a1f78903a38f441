package bywash.rules.response;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The response sheet of one incident as it stands.
 *
 * @param incident id shared by its alarms
 * @param site name of the site
 * @param asOf when it was last brought up to date
 * @param ended when its last alarm returned to normal; null while it stands
 * @param water litres that came in and went out, and where
 * @param residual the estimate, in words: now and at its peak
 * @param steps what to do, in order
 */
public record ResponseSheet(
        String incident,
        String site,
        Instant began,
        Instant asOf,
        @Nullable Instant ended,
        List<String> water,
        List<String> residual,
        List<String> rulesOut,
        List<SheetEvent> events,
        List<SheetStep> steps,
        List<String> cautions) {
    public ResponseSheet {
        water = List.copyOf(water);
        residual = List.copyOf(residual);
        rulesOut = List.copyOf(rulesOut);
        events = List.copyOf(events);
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
    }

    /** The first step that is not done; null when all are. */
    public @Nullable SheetStep next() {
        return steps.stream().filter(s -> s.doneAt() == null).findFirst().orElse(null);
    }
}
