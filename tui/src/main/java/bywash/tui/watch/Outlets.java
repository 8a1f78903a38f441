package bywash.tui.watch;

import bywash.ingest.journal.KeptTransition;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.ChlorineMemory;
import bywash.rules.engine.IncidentMemory;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Where an alarm's changes go: to the record first, all of one event together, then to whoever else is told. Until the watch
 * is live they come of the journal's own lines and go nowhere. For the watch's own loop.
 */
public final class Outlets implements Consumer<AlarmTransition> {
    /** Takes a change and its alarm line; must not block. */
    public interface Outlet {
        void accept(AlarmTransition transition, String line);
    }

    private final String site;
    private final WatchRecord record;
    private final List<Outlet> outlets = new ArrayList<>();
    private final List<Change> changes = new ArrayList<>();
    private @Nullable Pipeline pipeline;
    /** Of what was last kept of chlorine. */
    private @Nullable Instant chlorineAt;

    public Outlets(String site, WatchRecord record) {
        this.site = site;
        this.record = record;
    }

    public void add(Outlet outlet) {
        outlets.add(outlet);
    }

    /** From here on changes are news. */
    public void goLive(Pipeline from) {
        pipeline = from;
    }

    /** First {@code first}, also while the journal is played again, then this. */
    Consumer<AlarmTransition> after(Consumer<AlarmTransition> first) {
        return first.andThen(this);
    }

    @Override
    public void accept(AlarmTransition transition) {
        Pipeline from = pipeline;
        if (from == null) {
            return;
        }
        String after = AlarmMemoryJson.of(from.memory(transition.kind(), transition.subject()));
        String incident = from.incident(transition.incident()) ? transition.incident() : "";
        changes.add(new Change(transition, AlarmLines.of(site, transition), after, incident));
    }

    private record Change(AlarmTransition transition, String line, String after, String incident) {
        KeptTransition kept() {
            return new KeptTransition(
                    transition.at(), line, transition.kind().word(), transition.subject(), after, incident);
        }
    }

    /** How all alarms stand. */
    List<KeptTransition> standing() {
        Pipeline from = pipeline;
        return from == null
                ? List.of()
                : from.snapshot().alarms().stream()
                        .map(a -> new KeptTransition(
                                a.since(),
                                "",
                                a.kind().word(),
                                a.subject(),
                                AlarmMemoryJson.of(from.memory(a.kind(), a.subject()))))
                        .toList();
    }

    /** The event is over: its changes go on the record, and then out. */
    void settle() {
        Pipeline from = pipeline;
        if (from != null) {
            keep(from.chlorine());
        }
        List<IncidentMemory> incidents = from == null ? List.of() : from.changedIncidents();
        if (changes.isEmpty() && incidents.isEmpty()) {
            return;
        }
        List<Change> all = List.copyOf(changes);
        changes.clear();
        Map<String, String> figures = new LinkedHashMap<>();
        incidents.forEach(i -> figures.put(i.figures().incident(), IncidentMemoryJson.of(i)));
        record.transitions(all.stream().map(Change::kept).toList(), figures);
        for (Change change : all) {
            outlets.forEach(outlet -> outlet.accept(change.transition(), change.line()));
        }
    }

    private void keep(@Nullable ChlorineMemory now) {
        if (now != null && !now.at().equals(chlorineAt)) {
            chlorineAt = now.at();
            record.chlorine(now.at(), ChlorineMemoryJson.of(now));
        }
    }
}
