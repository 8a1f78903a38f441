package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.ChlorineMemory;
import bywash.rules.chlorine.ReserveBatch;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.chlorine.ResidualTracker;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.WaterBalance;
import bywash.rules.event.EngineEvent;
import bywash.rules.event.EngineEvent.FeedChanged;
import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EngineEvent.ReadingArrived;
import bywash.rules.event.EngineEvent.ReadingRefused;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.event.Reading;
import bywash.rules.husbandry.daily.PastMinutes;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.rules.husbandry.season.Surroundings;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.response.IncidentBook;
import bywash.rules.site.Device;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.site.SystemVolume;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The one fold over events. A single writer calls {@link #apply}; the same events give the same transitions, always.
 * Nothing here reads a clock: time comes in with events, and decisions are made on ticks.
 */
public final class Engine {
    private static final long CHLORINE_EVERY_S = 3600;

    private final Site site;
    private final Map<String, ProbeMonitor> monitors = new LinkedHashMap<>();
    private final Map<String, ProbeMonitor> byProbe = new HashMap<>();
    private final Map<String, ProbeMonitor> levels = new HashMap<>();
    private final AlarmBoard board = new AlarmBoard();
    private final WaterBalance balance;
    private final ResidualTracker residual;
    private final Suppression suppression;
    private final Bands bands;
    private final ProbeRules probeRules;
    private final FlowRules flowRules;
    private final SystemRules systemRules;
    private final NitrogenRules nitrogenRules;
    private final CareRules careRules;
    private final EntryRules entryRules;
    private final SeasonLedger season;
    private Stocking stocking;
    private final Map<String, FlowFinding> findings = new LinkedHashMap<>();
    private @Nullable ChlorineMemory chlorine;
    private @Nullable Instant at;
    private boolean feedUp = true;
    private String feedDetail = "";

    public Engine(Site site) {
        this.site = site;
        this.stocking = site.stocking();
        this.balance = new WaterBalance(site);
        this.residual = new ResidualTracker(site);
        this.suppression = new Suppression(site, board);
        this.bands = new Bands(site);
        this.probeRules = new ProbeRules(board);
        this.flowRules = new FlowRules(board, new Brought(site.mains(), residual));
        this.systemRules = new SystemRules(site, board, balance, residual);
        this.nitrogenRules = new NitrogenRules(site, board);
        this.careRules = new CareRules(site, board, residual);
        this.entryRules = new EntryRules(board, suppression, balance, residual, nitrogenRules);
        this.season = new SeasonLedger(site);
        for (Probe probe : site.probes()) {
            ProbeMonitor monitor =
                    new ProbeMonitor(probe, site.vessel(probe.vessel()).orElse(null));
            monitors.put(probe.id(), monitor);
            byProbe.put(probe.id(), monitor);
            if (probe.quantity() == Quantity.LEVEL) {
                levels.putIfAbsent(probe.vessel(), monitor);
            }
        }
        bands();
    }

    /** Takes one event and returns the alarm transitions it caused, in order. */
    public List<AlarmTransition> apply(EngineEvent event) {
        if (at == null || event.at().isAfter(at)) {
            at = event.at();
        }
        switch (event.kind()) {
            case READING_ARRIVED -> reading(((ReadingArrived) event).reading());
            case READING_REFUSED -> refused((ReadingRefused) event);
            case TICK -> tick(event.at());
            case OPERATOR_ACTED -> acted(((OperatorActed) event).entry(), null);
            case FEED_CHANGED -> {
                FeedChanged changed = (FeedChanged) event;
                feedUp = changed.up();
                feedDetail = changed.detail();
            }
            case WATCH_STARTED -> {
                monitors.values().forEach(monitor -> monitor.resume(event.at()));
                board.unwatched();
            }
        }
        List<AlarmTransition> transitions = board.drain();
        careRules.transitions(transitions);
        return transitions;
    }

    /** @param past what the probes read around the entry's time; null where its readings came in one by one */
    private void acted(OperatorEntry entry, @Nullable PastMinutes past) {
        stocking = entryRules.apply(entry, stocking);
        careRules.entry(entry);
        OperatorEntry undone = entry instanceof Withdraw withdraw ? season.named(withdraw) : null;
        if (past == null) {
            season.book(entry);
        } else {
            season.book(entry, past);
        }
        if (entry instanceof StockingChange) {
            stocking = season.stocking(); // one entered late does not undo a newer one
        } else if (undone != null) {
            stocking = entryRules.withdrawn(entry.at(), undone, season, stocking);
        }
        fish();
    }

    /** The species on record may have changed, and with them what the water is held against. */
    private void fish() {
        List<Species> species = season.species();
        bands.fish(species);
        bands();
        SpeciesLimits limits = SpeciesLimits.of(species);
        residual.criteria(limits.acuteUgL(), limits.chronicUgL());
        systemRules.limits(limits);
        nitrogenRules.limits(limits);
    }

    private void bands() {
        monitors.values().forEach(monitor -> monitor.band(bands.of(monitor.probe(), stocking)));
    }

    private void refused(ReadingRefused refused) {
        ProbeMonitor monitor = byProbe.get(refused.probe());
        if (monitor != null) {
            monitor.refuse(refused.reason());
        }
    }

    private void reading(Reading reading) {
        ProbeMonitor monitor = byProbe.get(reading.probe());
        if (monitor == null || !monitor.accept(reading)) {
            return;
        }
        Probe probe = monitor.probe();
        monitor.handled(suppression.inCare(probe.id(), reading.at()));
        if (monitor.handled()) {
            return; // shown, but nothing is learned of it
        }
        season.reading(probe.id(), reading.at(), reading.value());
        if (probe.quantity() == Quantity.LEVEL) {
            level(probe, reading);
        } else if (probe.quantity() == Quantity.STATE && probe.device() == Device.PUMP) {
            balance.pump(reading.at(), reading.value() >= 0.5);
        } else {
            residual.signals().reading(reading, systemRules.incident());
        }
    }

    private void level(Probe probe, Reading reading) {
        Vessel vessel = site.vessel(probe.vessel()).orElse(null);
        if (vessel == null || vessel.shape() == null) {
            return;
        }
        double inside = StrictMath.max(0, StrictMath.min(vessel.shape().heightMm(), reading.value()));
        balance.level(vessel.id(), reading.at(), inside);
        ReserveBatch batch = residual.batch(vessel.id());
        if (batch != null) {
            batch.level(reading.at(), vessel.shape().volumeL(inside));
        }
    }

    private void tick(Instant now) {
        balance.tick(now);
        for (ProbeMonitor monitor : monitors.values()) {
            monitor.tick(now);
            ProbeStatus.Health health = monitor.health(now);
            probeRules.tick(monitor, health, now);
            residual.signals().stuck(monitor.probe().id(), health == ProbeStatus.Health.STUCK);
        }
        findings.clear();
        for (Vessel vessel : site.vessels()) {
            FlowFinding finding = balance.finding(vessel.id());
            if (finding != null) {
                findings.put(vessel.id(), finding);
            }
            flowRules.tick(vessel, finding, believedLevel(vessel, now), now);
        }
        SystemVolume volume = SystemVolume.of(site, v -> believedLevel(v, now));
        residual.tick(now, findings, volume, spilling(now));
        systemRules.tick(now, findings, monitors.values(), feedUp, feedDetail);
        nitrogenRules.tick(now, monitors.values(), stocking);
        careRules.tick(
                now,
                findings.values(),
                careRules.standing() ? CareRules.probes(monitors.values(), now) : List.of(),
                volume);
        suppression.tick(now);
        board.tick(now);
        if (now.getEpochSecond() % CHLORINE_EVERY_S == 0) {
            chlorine = residual.memory(now);
        }
    }

    /** What the balance found at the last tick, of each vessel with a level: the very figures that alarms and sheets have. */
    public Collection<FlowFinding> findings() {
        return Collections.unmodifiableCollection(findings.values());
    }

    /** What is known of chlorine as of the last whole hour; null before the first. */
    public @Nullable ChlorineMemory chlorine() {
        return chlorine;
    }

    /** Before the first reading: what was known of chlorine then; null where that is lost, though a watch has been. */
    public void restore(@Nullable ChlorineMemory memory) {
        if (memory == null) {
            residual.unwatched();
        } else {
            residual.restore(memory);
        }
    }

    private boolean spilling(Instant now) {
        for (Vessel vessel : site.vessels()) {
            if (vessel.role() != VesselRole.RESERVE && believedLevel(vessel, now) >= vessel.overflowMm()) {
                return true;
            }
        }
        return false;
    }

    private double believedLevel(Vessel vessel, @Nullable Instant now) {
        ProbeMonitor monitor = levels.get(vessel.id());
        if (monitor == null || now == null || vessel.shape() == null) {
            return Double.NaN;
        }
        return switch (monitor.health(now)) {
            case GOOD, STUCK -> monitor.value();
            case WAITING, SILENT, IMPLAUSIBLE -> Double.NaN;
        };
    }

    /** Reserves whose water a test has shown free of chlorine since its last filling. */
    public Set<String> safeReserves() {
        return residual.safeReserves();
    }

    /** What a restart needs to know of an alarm. */
    public AlarmMemory memory(AlarmKind kind, String subject) {
        return board.memory(kind, subject);
    }

    /** Puts the alarms back as they were; those not named are normal. Gives no transitions. */
    public void restore(List<AlarmMemory> alarms, Instant now) {
        board.restore(alarms, now);
    }

    /** Whether alarms of this incident are on a response sheet. */
    public boolean incident(String id) {
        return careRules.incident(id);
    }

    /** What a restart needs to know of the incidents that have changed since this was last asked. */
    public List<IncidentMemory> changedIncidents() {
        return careRules.changed();
    }

    /**
     * Puts the incidents back as they were; those not named are forgotten.
     *
     * @param book a fresh one that has been told the alarm lines and the entries of old
     * @param memories as they were kept last, oldest first
     */
    public void restore(IncidentBook book, List<IncidentMemory> memories, Instant now) {
        careRules.restore(book, memories, now, SystemVolume.of(site, v -> believedLevel(v, now)));
    }

    /**
     * An entry so long ago that the readings around it are not played again. No time passes for it.
     *
     * @param past what the probes read then
     */
    public List<AlarmTransition> remember(OperatorEntry entry, PastMinutes past) {
        if (at == null || entry.at().isAfter(at)) {
            at = entry.at();
        }
        acted(entry, past);
        List<AlarmTransition> transitions = board.drain();
        careRules.transitions(transitions);
        return transitions;
    }

    /** Everything a screen needs, immutable. */
    public Snapshot snapshot() {
        ResidualEstimate estimate = residual.estimate();
        List<ProbeStatus> probes = new ArrayList<>();
        for (ProbeMonitor monitor : monitors.values()) {
            String suspect = at == null ? "" : season.suspect(monitor.probe().id(), at);
            probes.add(monitor.status(at, suspect));
        }
        List<VesselStatus> vessels = new ArrayList<>();
        for (Vessel vessel : site.vessels()) {
            double levelMm = believedLevel(vessel, at);
            double volumeL = volume(vessel, levelMm);
            vessels.add(new VesselStatus(
                    vessel, levelMm, volumeL, vessel.overflowMm() - levelMm, findings.get(vessel.id())));
        }
        return new Snapshot(
                site,
                at,
                stocking,
                probes,
                vessels,
                estimate,
                board.views(),
                balance.topUp(),
                feedUp,
                feedDetail,
                careRules.status(at),
                at == null ? null : season.status(at, surroundings(at, estimate)),
                season.tests(),
                balance.lines());
    }

    private Surroundings surroundings(Instant now, ResidualEstimate estimate) {
        SystemVolume volume = SystemVolume.of(site, v -> believedLevel(v, now));
        return new Surroundings(stocking, volume.likelyL(), estimate.highUgL());
    }

    /** The season's book: for a report, and to be told of the days before the first reading. */
    public SeasonLedger season() {
        return season;
    }

    private static double volume(Vessel vessel, double levelMm) {
        if (vessel.shape() == null || Double.isNaN(levelMm)) {
            return Double.NaN;
        }
        double inside = StrictMath.max(0, StrictMath.min(vessel.shape().heightMm(), levelMm));
        return vessel.shape().volumeL(inside);
    }
}
