package bywash.rules.response;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.site.Site;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** The incidents with moving water or an oxidant, newest last; the oldest are forgotten past fifty. One writer. */
public final class IncidentBook {
    private static final int MOST = 50;
    private static final Set<AlarmKind> KINDS = EnumSet.of(
            AlarmKind.UNPLANNED_INFLOW,
            AlarmKind.UNPLANNED_LOSS,
            AlarmKind.OVERFLOW_NEAR,
            AlarmKind.LINE_NOT_SHUT,
            AlarmKind.UNSAFE_RELEASE,
            AlarmKind.CHLORINE_RISK,
            AlarmKind.ORP_RISE);

    private final Site site;
    private final Map<String, Incident> incidents = new LinkedHashMap<>();

    public IncidentBook(Site site) {
        this.site = site;
    }

    /** An alarm changed its state. */
    public void transition(AlarmTransition t) {
        Incident known = incidents.get(t.incident());
        if (known != null) {
            known.transition(t);
        } else if (KINDS.contains(t.kind()) && t.state() == AlarmState.UNACKNOWLEDGED) {
            Incident fresh = new Incident(t.incident(), site, t.at());
            incidents.put(t.incident(), fresh);
            fresh.transition(t);
            if (incidents.size() > MOST) {
                incidents.remove(incidents.keySet().iterator().next());
            }
        }
    }

    /** An entry: a ticked step goes to its incident, all else onto the record of those that stand. */
    public void entry(OperatorEntry entry) {
        if (entry instanceof StepDone tick) {
            Incident incident = incidents.get(tick.incident());
            if (incident != null) {
                incident.event(tick.at(), "done: " + tick.step() + (tick.note().isEmpty() ? "" : ", " + tick.note()));
                incident.done(tick.step(), tick.at(), tick.note());
            }
            return;
        }
        String words = EntryWords.of(entry);
        if (!words.isEmpty()) {
            incidents.values().stream().filter(i -> i.open(entry.at())).forEach(i -> i.event(entry.at(), words));
        }
    }

    /** Whether any incident stands. */
    public boolean standing() {
        return incidents.values().stream().anyMatch(Incident::standing);
    }

    /** Brings the sheets of incidents that stand up to date. */
    public void tick(Readings now) {
        incidents.values().forEach(i -> i.tick(now));
    }

    /** The sheets, newest first. */
    public List<ResponseSheet> sheets() {
        List<ResponseSheet> sheets = new ArrayList<>();
        incidents.values().stream()
                .map(Incident::sheet)
                .filter(Objects::nonNull)
                .forEach(sheets::add);
        Collections.reverse(sheets);
        return sheets;
    }

    /** What each incident comes to, oldest first. */
    public List<IncidentSummary> summaries() {
        return incidents.values().stream().map(Incident::summary).toList();
    }
}
