package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.Condition;
import bywash.rules.chlorine.ResidualTracker;
import bywash.rules.detect.FlowFinding;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.prevention.Prevention;
import bywash.rules.prevention.Suggestion;
import bywash.rules.recovery.Bacteria;
import bywash.rules.recovery.RecentMeals;
import bywash.rules.recovery.Recovery;
import bywash.rules.recovery.RecoveryMemory;
import bywash.rules.recovery.RecoveryView;
import bywash.rules.recovery.WaterTests;
import bywash.rules.response.IncidentBook;
import bywash.rules.response.IncidentSummary;
import bywash.rules.response.Readings;
import bywash.rules.response.Readings.ProbeNow;
import bywash.rules.site.Site;
import bywash.rules.site.SystemVolume;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Keeps the incidents, their response sheets, the way back, and what the record suggests. */
final class CareRules {
    private static final Duration EVERY = Duration.ofSeconds(60);

    private final Site site;
    private final AlarmBoard board;
    private final ResidualTracker residual;
    private IncidentBook book;
    private final WaterTests tests = new WaterTests();
    private final RecentMeals feed = new RecentMeals();
    private final Recovery recovery = new Recovery(tests, feed);
    private @Nullable Instant lookedAt;
    private @Nullable RecoveryMemory told;
    private @Nullable RecoveryView recoveryView;
    private List<Suggestion> suggestions = List.of();

    CareRules(Site site, AlarmBoard board, ResidualTracker residual) {
        this.site = site;
        this.board = board;
        this.residual = residual;
        this.book = new IncidentBook(site);
    }

    void entry(OperatorEntry entry) {
        book.entry(entry);
        lookedAt = null;
        if (entry instanceof WaterTest test && !site.isReserve(test.vessel())) {
            tests.add(test.quantity(), test.at(), test.value());
        } else if (entry instanceof Feed meal) {
            feed.add(meal.at(), meal.massG(), meal.proteinFraction());
        }
    }

    void transitions(List<AlarmTransition> transitions) {
        if (!transitions.isEmpty()) {
            transitions.forEach(book::transition);
            lookedAt = null;
        }
    }

    void tick(Instant at, Collection<FlowFinding> findings, List<ProbeNow> probes, SystemVolume volume) {
        if (book.standing()) {
            book.tick(
                    new Readings(at, residual.estimate(), volume, List.copyOf(findings), residual.batches(at), probes));
        }
        Instant before = lookedAt;
        if (before == null || !at.isBefore(before.plus(EVERY))) {
            lookedAt = at;
            look(at, volume);
        }
    }

    private void look(Instant at, SystemVolume volume) {
        List<IncidentSummary> summaries = book.summaries();
        recovery.tick(at, recoveredFrom(summaries));
        views(at, summaries, volume);
        Bacteria bacteria = Bacteria.judge(at, tests, feed, volume.likelyL());
        board.set(
                AlarmKind.BIOFILTER_SETBACK,
                SystemRules.SYSTEM,
                at,
                bacteria.setback()
                        ? Condition.of(
                                "The nitrifying bacteria are set back",
                                bacteria.words(),
                                null,
                                "climb_mg_l_day",
                                number(bacteria.climbMgLDay()),
                                "expected_mg_l_day",
                                number(bacteria.expectedMgLDay()))
                        : null);
    }

    /** The newest with an oxidant is the one to come back from; returns whether it still stands. */
    private boolean recoveredFrom(List<IncidentSummary> summaries) {
        IncidentSummary newest = null;
        for (IncidentSummary summary : summaries) {
            newest = summary.oxidant() ? summary : newest;
        }
        if (newest == null) {
            return false;
        }
        recovery.begin(newest.id(), newest.began());
        return newest.ended() == null;
    }

    private void views(Instant at, List<IncidentSummary> summaries, SystemVolume volume) {
        recoveryView = recovery.view(at, volume.likelyL());
        suggestions = Prevention.of(site, summaries);
    }

    /** Whether this is an incident of the book. */
    boolean incident(String id) {
        return book.has(id);
    }

    /** What a restart needs to know of the incidents that have changed since this was last asked. */
    List<IncidentMemory> changed() {
        List<String> ids = book.changed();
        RecoveryMemory way = recovery.memory();
        if (ids.isEmpty() && Objects.equals(way, told)) {
            return List.of();
        }
        Set<String> all = new LinkedHashSet<>(ids);
        if (way != null && !way.equals(told)) {
            all.add(way.incident());
        }
        told = way;
        List<IncidentMemory> changed = new ArrayList<>();
        for (String id : all) {
            book.figures(id)
                    .ifPresent(f -> changed.add(
                            new IncidentMemory(f, way != null && way.incident().equals(id) ? way : null)));
        }
        return changed;
    }

    /**
     * Goes on after a restart.
     *
     * @param fresh a book that has been told the alarm lines and the entries of old
     * @param memories as they were kept last, oldest first
     */
    void restore(IncidentBook fresh, List<IncidentMemory> memories, Instant at, SystemVolume volume) {
        fresh.restore(memories.stream().map(IncidentMemory::figures).toList(), book, at);
        book = fresh;
        RecoveryMemory way = null;
        for (IncidentMemory memory : memories) {
            way = memory.recovery() == null ? way : memory.recovery();
        }
        RecoveryMemory seen = recovery.memory();
        if (way != null || seen == null || !fresh.has(seen.incident())) {
            recovery.restore(way);
        }
        told = recovery.memory();
        List<IncidentSummary> summaries = book.summaries();
        recoveredFrom(summaries);
        views(at, summaries, volume);
    }

    private static Object number(double value) {
        return Double.isNaN(value) ? "unknown" : Text.round(value, 2);
    }

    CareStatus status(@Nullable Instant at) {
        return at == null
                ? CareStatus.NONE
                : new CareStatus(residual.batches(at), book.sheets(), recoveryView, suggestions);
    }

    /** Probes as the sheets take them. */
    static List<ProbeNow> probes(Collection<ProbeMonitor> monitors, Instant at) {
        return monitors.stream()
                .map(m -> new ProbeNow(
                        m.probe().id(),
                        m.probe().vessel(),
                        m.probe().quantity(),
                        m.value(),
                        m.health(at) == ProbeStatus.Health.GOOD,
                        m.band()))
                .toList();
    }

    boolean standing() {
        return book.standing();
    }
}
