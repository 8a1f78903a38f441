package bywash.rules.detect;

import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.TopUpWatch.Line;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Device;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Watches every vessel with a level probe for water that nobody meant to move, and names where it comes from. */
public final class WaterBalance {
    /** Share of a grow bed's volume that water can fill between the stones. Common practice, no source. */
    private static final double BED_WATER_SHARE = 0.5;

    private static final double PIPES_SHARE = 0.05;
    private static final double START_NOISE_MM = 1.5;

    private final Site site;
    private final Map<String, VesselFlow> flows = new LinkedHashMap<>();
    private final FindingWords words;
    private final BalanceBook book;
    /** How long a level probe may be silent before its vessel is blind. */
    private final Map<String, Double> silenceMin = new HashMap<>();

    private @Nullable TopUpWatch topUp;
    private @Nullable Instant origin;
    private @Nullable Instant now;

    public WaterBalance(Site site) {
        this.site = site;
        Hold hold = new Hold(
                site.vessels(VesselRole.GROW_BED).size(),
                volumeL(site, VesselRole.GROW_BED) * BED_WATER_SHARE,
                volumeL(site, VesselRole.FISH_TANK) * PIPES_SHARE);
        boolean told = site.probes().stream().anyMatch(p -> p.device() == Device.PUMP);
        Pump pump = told ? Pump.TOLD : Pump.UNTOLD;
        for (Vessel vessel : site.vessels()) {
            if (vessel.shape() != null
                    && site.probe(vessel.id(), Quantity.LEVEL).isPresent()) {
                Probe probe = site.probe(vessel.id(), Quantity.LEVEL).orElseThrow();
                silenceMin.put(vessel.id(), probe.silence().toMillis() / 60_000.0);
                double noiseL = vessel.shape().areaM2(vessel.shape().heightMm() / 2) * START_NOISE_MM;
                Duration every = probe.every();
                boolean sump = vessel.role() == VesselRole.SUMP;
                double brimL = vessel.shape()
                        .volumeL(StrictMath.min(
                                vessel.overflowMm(), vessel.shape().heightMm()));
                flows.put(
                        vessel.id(),
                        new VesselFlow(noiseL, sump ? hold : Hold.NONE, every, sump ? pump : Pump.NONE, brimL));
            }
        }
        this.words = new FindingWords(site, flows, told);
        this.book = new BalanceBook(flows);
    }

    private static double volumeL(Site site, VesselRole role) {
        return site.vessels(role).stream().mapToDouble(Vessel::volumeL).sum();
    }

    /** A believable level; depth in mm above the floor, within the vessel. */
    public void level(String vessel, Instant at, double depthMm) {
        VesselFlow flow = flows.get(vessel);
        Vessel known = site.vessel(vessel).orElse(null);
        if (flow != null && known != null && known.shape() != null) {
            flow.level(heard(at), known.shape().volumeL(depthMm));
        }
    }

    /** The circulation pump is known to have started or stopped. */
    public void pump(Instant at, boolean on) {
        for (Vessel sump : site.vessels(VesselRole.SUMP)) {
            VesselFlow flow = flows.get(sump.id());
            if (flow != null) {
                flow.pump(heard(at), on);
            }
        }
    }

    /** The grower declared a release. */
    public void topUpStarted(OperatorEntry.TopUpStart entry) {
        VesselFlow target = flows.get(entry.vessel());
        if (target != null) {
            topUp = new TopUpWatch(entry, heard(entry.at()), target, flows.get(entry.source()));
        }
    }

    /** The grower says the line is shut; from here on it must be. */
    public void topUpEnded(OperatorEntry.TopUpEnd entry) {
        if (topUp != null && topUp.vessel().equals(entry.vessel())) {
            topUp.end(entry.at(), heard(entry.at()));
        }
    }

    /** A reserve was or is being filled. */
    public void batchFilled(OperatorEntry.BatchFill entry) {
        VesselFlow flow = flows.get(entry.vessel());
        if (flow != null) {
            flow.rebase();
            book.filling(entry.vessel(), heard(entry.at()), entry.volumeL());
        }
    }

    /** Event time reached {@code at}; decisions are made here. */
    public void tick(Instant at) {
        now = at;
        double nowMin = heard(at);
        for (VesselFlow flow : flows.values()) {
            flow.decide(nowMin);
        }
        if (topUp != null) {
            topUp.tick(nowMin);
        }
        book.tick(nowMin, topUp);
    }

    /** The hourly balance of each vessel with a level probe and of all together; empty before the first tick. */
    public List<BalanceLine> lines() {
        Instant start = origin;
        return now == null || start == null ? List.of() : book.lines(start, minutes(start, now));
    }

    /** What is known of a vessel; null where it has no level probe or no tick has come. */
    public @Nullable FlowFinding finding(String vessel) {
        VesselFlow flow = flows.get(vessel);
        Instant at = now;
        Instant start = origin;
        if (flow == null || at == null || start == null) {
            return null;
        }
        Vessel known = site.vessel(vessel).orElseThrow();
        double nowMin = minutes(start, at);
        double silence = nowMin - flow.views().lastMin();
        double limit = silenceMin.getOrDefault(vessel, 1.0);
        if (Double.isNaN(flow.views().lastMin()) || silence > limit) {
            return words.blind(vessel, silence);
        }
        TopUpWatch watch = topUp;
        if (watch != null && (vessel.equals(watch.vessel()) || vessel.equals(watch.source()))) {
            FlowFinding declared = declared(known, flow, watch, start, nowMin);
            if (declared != null) {
                return declared;
            }
        }
        return words.plain(known, flow, verdict(known, flow), start, nowMin);
    }

    private static Verdict verdict(Vessel vessel, VesselFlow flow) {
        boolean reserve = vessel.role() == VesselRole.RESERVE;
        return switch (flow.motion()) {
            case LEARNING -> Verdict.LEARNING;
            case STEADY -> Verdict.QUIET;
            case IN -> reserve ? Verdict.PLANNED : Verdict.UNPLANNED_INFLOW;
            case OUT -> Verdict.UNPLANNED_LOSS;
            case DRAINING_BACK -> Verdict.DRAIN_DOWN;
        };
    }

    private @Nullable FlowFinding declared(
            Vessel vessel, VesselFlow flow, TopUpWatch watch, Instant start, double nowMin) {
        boolean target = vessel.id().equals(watch.vessel());
        Line line = watch.line();
        if (!line.explains()) {
            return null;
        }
        if (!target && line == Line.CHECKING && flow.motion() != Motion.OUT) {
            return null;
        }
        Verdict verdict = switch (line) {
            case RUNNING, IDLE, CHECKING, SHUT -> Verdict.PLANNED;
            case OVERRUN, OPEN -> target ? Verdict.LINE_NOT_SHUT : Verdict.PLANNED;
        };
        return words.declared(vessel, watch, verdict, target, start, nowMin);
    }

    /** The running or last top-up; null when there was none. */
    public @Nullable TopUp topUp() {
        return topUp == null ? null : topUp.view();
    }

    /** An event's minute; the first event's is 0. */
    private double heard(Instant at) {
        origin = origin == null ? at : origin;
        return minutes(origin, at);
    }

    private static double minutes(Instant start, Instant at) {
        return Duration.between(start, at).toMillis() / 60_000.0;
    }
}
