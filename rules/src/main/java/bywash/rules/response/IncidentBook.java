package bywash.rules.response;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.site.Site;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** The incidents with moving water or an oxidant, newest last; the oldest are forgotten past fifty. One writer. */
public final class IncidentBook {
    /** So many are kept. */
    public static final int MOST = 50;

    /** The kinds of alarm that begin an incident; those of any other kind only join one. */
    public static final Set<AlarmKind> KINDS = Collections.unmodifiableSet(EnumSet.of(
            AlarmKind.UNPLANNED_INFLOW,
            AlarmKind.UNPLANNED_LOSS,
            AlarmKind.OVERFLOW_NEAR,
            AlarmKind.LINE_NOT_SHUT,
            AlarmKind.UNSAFE_RELEASE,
            AlarmKind.CHLORINE_RISK,
            AlarmKind.ORP_RISE));

    private final Site site;
    private final Map<String, IncidentCourse> incidents = new LinkedHashMap<>();
    private final Set<String> changed = new LinkedHashSet<>();

    public IncidentBook(Site site) {
        this.site = site;
    }

    /** An alarm changed its state. */
    public void transition(AlarmTransition t) {
        IncidentCourse known = incidents.get(t.incident());
        if (known != null) {
            known.transition(t);
            changed.add(t.incident());
        } else if (KINDS.contains(t.kind()) && t.state() == AlarmState.UNACKNOWLEDGED) {
            IncidentCourse fresh = new IncidentCourse(t.incident(), site, t.at());
            incidents.put(t.incident(), fresh);
            fresh.transition(t);
            changed.add(t.incident());
            if (incidents.size() > MOST) {
                incidents.remove(incidents.keySet().iterator().next());
            }
        }
    }

    /**
     * A line of the record, told again. One of an incident that the book does not know yet, and that does not begin one, is what is
     * left of it: its first lines are lost.
     */
    public void told(AlarmTransition t) {
        boolean begins = KINDS.contains(t.kind()) && t.state() == AlarmState.UNACKNOWLEDGED;
        if (!incidents.containsKey(t.incident()) && !begins) {
            lost(t.incident(), t.at());
        }
        transition(t);
    }

    /**
     * How alarms stand, once the record has been told: an incident whose lines are all lost stands by them, and by what readings had
     * added. Where nothing is lost this changes nothing.
     *
     * @param kept figures of incidents of the record
     * @param at when the watch before ended
     */
    public void complete(List<IncidentFigures> kept, List<AlarmMemory> alarms, Instant at) {
        for (IncidentFigures figures : kept) {
            if (!incidents.containsKey(figures.incident())) {
                lost(figures.incident(), began(figures, at))
                        .over(figures.sheet() == null ? at : figures.sheet().asOf());
            }
        }
        for (AlarmMemory alarm : alarms) {
            IncidentCourse known = incidents.get(alarm.incident());
            Instant raised = alarm.raisedAt();
            if (alarm.state().holds()
                    && raised != null
                    && !alarm.incident().isEmpty()
                    && (known != null || KINDS.contains(alarm.kind()))) {
                (known == null ? lost(alarm.incident(), raised) : known).stands(alarm);
            }
        }
        List<IncidentCourse> byTime = new ArrayList<>(incidents.values());
        byTime.sort(Comparator.comparing(IncidentCourse::began));
        incidents.clear();
        byTime.forEach(i -> incidents.put(i.id(), i));
    }

    private static Instant began(IncidentFigures figures, Instant at) {
        Instant first = at;
        for (WaterRun run : figures.water()) {
            first = run.since().isBefore(first) ? run.since() : first;
        }
        IncidentFigures.Peak peak = figures.peak();
        return peak != null && peak.at().isBefore(first) ? peak.at() : first;
    }

    private IncidentCourse lost(String id, Instant at) {
        IncidentCourse left = new IncidentCourse(id, site, at);
        left.damaged(
                at, "The record was damaged: the first lines of this incident are lost, it may have begun earlier");
        incidents.put(id, left);
        changed.add(id);
        return left;
    }

    /** An entry: a ticked step goes to its incident, all else onto the record of those that stand. */
    public void entry(OperatorEntry entry) {
        if (entry instanceof StepDone tick) {
            IncidentCourse incident = incidents.get(tick.incident());
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
        for (IncidentCourse incident : incidents.values()) {
            if (incident.standing()) {
                return true;
            }
        }
        return false;
    }

    /** Brings the sheets of incidents that stand up to date. */
    public void tick(Readings now) {
        for (IncidentCourse incident : incidents.values()) {
            if (incident.tick(now)) {
                changed.add(incident.id());
            }
        }
    }

    /** Whether an incident of this id is in it. */
    public boolean has(String id) {
        return incidents.containsKey(id);
    }

    /** What readings have added to an incident; empty where it is not in the book. */
    public Optional<IncidentFigures> figures(String id) {
        return Optional.ofNullable(incidents.get(id)).map(IncidentCourse::figures);
    }

    /** Ids of incidents whose figures may have changed since this was last asked, but for those of the last minute. */
    public List<String> changed() {
        if (changed.isEmpty()) {
            return List.of();
        }
        List<String> ids = changed.stream().filter(incidents::containsKey).toList();
        changed.clear();
        return ids;
    }

    /**
     * After a restart, in a fresh book that has been told the alarm lines and the entries of old: what readings had added.
     *
     * @param kept as they were kept last
     * @param seen a book that has seen the readings of the last days again: for an incident of which nothing was kept
     * @param at when the watch before ended
     */
    public void restore(List<IncidentFigures> kept, IncidentBook seen, Instant at) {
        Map<String, IncidentFigures> byId = new HashMap<>();
        kept.forEach(figures -> byId.put(figures.incident(), figures));
        for (IncidentCourse incident : incidents.values()) {
            IncidentFigures figures = byId.get(incident.id());
            IncidentCourse same = seen.incidents.get(incident.id());
            if (figures != null) {
                incident.restore(figures, at);
            } else if (same != null && same.began().equals(incident.began())) {
                incident.restore(same);
            }
        }
        changed.clear();
    }

    /** The sheets, newest first. */
    public List<ResponseSheet> sheets() {
        List<ResponseSheet> sheets = new ArrayList<>();
        incidents.values().stream()
                .map(IncidentCourse::sheet)
                .filter(Objects::nonNull)
                .forEach(sheets::add);
        Collections.reverse(sheets);
        return sheets;
    }

    /** What each incident comes to, oldest first. */
    public List<IncidentSummary> summaries() {
        return incidents.values().stream().map(IncidentCourse::summary).toList();
    }
}
