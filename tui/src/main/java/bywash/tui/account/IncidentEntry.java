package bywash.tui.account;

import bywash.rules.alarm.AlarmSpell;
import bywash.rules.alarm.Priority;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One incident in the list of all: alarms of one cause.
 *
 * @param ended null while an alarm of it stands
 * @param spells its alarms, the first cause first
 */
public record IncidentEntry(
        String id, Instant began, @Nullable Instant ended, List<AlarmSpell> spells) {
    public IncidentEntry {
        spells = List.copyOf(spells);
    }

    /** What began it. */
    public AlarmSpell cause() {
        return spells.get(0);
    }

    /** The most urgent of its alarms. */
    public Priority priority() {
        return spells.stream()
                .map(s -> s.raised().priority())
                .min(Comparator.naturalOrder())
                .orElse(Priority.LOW);
    }

    /** The incidents of these spells, oldest first. */
    public static List<IncidentEntry> of(List<AlarmSpell> spells) {
        Map<String, List<AlarmSpell>> stories = new LinkedHashMap<>();
        for (AlarmSpell spell : spells) {
            stories.computeIfAbsent(spell.incident(), id -> new ArrayList<>()).add(spell);
        }
        List<IncidentEntry> all = new ArrayList<>();
        stories.forEach(
                (id, of) -> all.add(new IncidentEntry(id, of.get(0).raised().at(), end(of), of)));
        return all;
    }

    private static @Nullable Instant end(List<AlarmSpell> spells) {
        Instant end = null;
        for (AlarmSpell spell : spells) {
            Instant over = spell.over();
            if (over == null) {
                return null;
            }
            end = end == null || over.isAfter(end) ? over : end;
        }
        return end;
    }
}
