package bywash.rules.chlorine;

import bywash.rules.detect.FlowFinding;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Site;
import bywash.rules.site.SystemVolume;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Figures;
import bywash.rules.water.Dechlorinator;
import bywash.rules.water.LossFit;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Follows the residual in the system: what came in by the balance, at the strength of its source, less decay. */
public final class ResidualTracker {
    private static final double TICK_S = 5;
    private static final double LAG_S = 360;
    private static final double CALM_SIGMAS = 2;
    private static final Duration BUSY_EVERY = Duration.ofSeconds(15);
    /** After this an estimate changes slowly, and temperature and pH have gone their own way. */
    private static final Duration LATELY = Duration.ofHours(1);

    /** A flow, or a potential out of the usual, ends the calm at the next tick. */
    private static final Duration CALM_EVERY = Duration.ofMinutes(2);

    private static final Duration LEARN_EVERY = Duration.ofSeconds(60);
    private static final double UNSEEN = 0.01;
    private static final double UNSEEN_BLIND = 0.02;
    /** An inflow of so many litres that stops is seen or missed alike, of siphon beds too; by the benchmark of the delays. */
    private static final double HALF_SEEN_L = 40;

    private static final double SPENT_MG_L = 0.001;
    private static final double LEAST_LEARNED_MG_L = 1e-4;
    private static final Duration SEEN_BY = Duration.ofMinutes(30);
    private static final double RISE_SIGMAS = 6;
    private static final double RISE_MV = 15;
    private static final double CLIMB_UG_L = 2;
    private static final double CLIMB_SURE = 0.7;

    /** Beside a vessel's flow stands, under a name of its own, what of it came from a reserve. No id has a blank. */
    private static final String OF_RESERVE = " of reserve";

    private static final String UNKNOWN_KIND = "; of unknown kind: it counts as mains water until it is tested";

    private final Site site;
    private final SystemBalance balance;
    private final WaterSignals signals;
    private final TreeMap<String, ReserveBatch> batches = new TreeMap<>();
    private final FlowSources sources;
    private final Joint told = new Joint();
    private @Nullable Instant learnedAt;
    private String learnedOf = "";
    private @Nullable ResidualEstimate current;
    /** Null where the next tick is to judge: something was entered that changes what is believed. */
    private @Nullable Instant judgedAt;

    private double laggedMgL;
    private boolean blind = true;
    private double acuteUgL = ResidualEstimate.ACUTE_UG_L;
    private double chronicUgL = ResidualEstimate.CHRONIC_UG_L;
    private boolean climbing;

    private boolean flowing;
    private @Nullable Instant flowedAt;

    public ResidualTracker(Site site) {
        this.site = site;
        this.signals = new WaterSignals(site);
        this.sources = new FlowSources(site.mains(), batches);
        boolean chloramine = site.mains().disinfectant() == Disinfectant.CHLORAMINE;
        this.balance = new SystemBalance(
                chloramine ? SystemLoss.CHLORAMINE : SystemLoss.CHLORINE, Litres.of(SystemVolume.of(site)));
        for (Vessel reserve : site.vessels(VesselRole.RESERVE)) {
            batches.put(reserve.id(), new ReserveBatch(reserve.id(), site.mains(), reserve.volumeL()));
        }
    }

    public @Nullable ReserveBatch batch(String reserve) {
        return batches.get(reserve);
    }

    /** What the residual is held against from here on, ug/L; the general criteria until it is said. */
    public void criteria(double acute, double chronic) {
        if (acute != acuteUgL || chronic != chronicUgL) {
            judgedAt = null;
        }
        acuteUgL = acute;
        chronicUgL = chronic;
    }

    /** Every reserve's batch at a time, by id. */
    public List<BatchView> batches(Instant at) {
        return batches.values().stream().map(b -> b.view(at)).toList();
    }

    /** Ids of the reserves that are known to be safe. */
    public Set<String> safeReserves() {
        Set<String> safe = new TreeSet<>();
        batches.forEach((id, batch) -> {
            if (batch.knownSafe()) {
                safe.add(id);
            }
        });
        return safe;
    }

    /** What a watch has to be told that begins here again. */
    public ChlorineMemory memory(Instant at) {
        return new ChlorineMemory(
                at,
                balance.memory(),
                batches.values().stream().map(ReserveBatch::memory).toList());
    }

    /** Goes on from there; reserves that it does not name are as they were entered. */
    public void restore(ChlorineMemory memory) {
        balance.restore(memory.at(), memory.system());
        for (ChlorineMemory.Batch kept : memory.batches()) {
            ReserveBatch batch = batches.get(kept.vessel());
            if (batch != null) {
                batch.restore(kept);
            }
        }
        judgedAt = null;
    }

    /** There was a watch before, but nothing is left of what it saw: what was entered on a reserve may hold no longer. */
    public void unwatched() {
        batches.values().forEach(ReserveBatch::unwatched);
    }

    /** Oxidation potential, pH and temperature as evidence. */
    public WaterSignals signals() {
        return signals;
    }

    /** A dechlorinator went into the system, g pure: what it may remove widens the range downward. */
    public void dosed(Instant at, Dechlorinator agent, double massG) {
        balance.dosed(at, massG * 1000 / agent.mgPerMgCl2());
        judgedAt = null;
    }

    /** Such a dose was taken back: the estimate is what it would be without it. */
    public void undosed(Instant at, Dechlorinator agent, double massG) {
        balance.undosed(at, massG * 1000 / agent.mgPerMgCl2());
        judgedAt = null;
    }

    /** A total-chlorine test, of a reserve or of the system. */
    public void tested(String vessel, Instant at, double totalMgL) {
        ReserveBatch batch = batches.get(vessel);
        if (batch != null) {
            batch.tested(at, totalMgL);
        } else {
            balance.tested(at, totalMgL, StrictMath.max(LossFit.LEAST_READING_MG_L, 0.1 * totalMgL));
            judgedAt = null;
        }
    }

    /** A total-chlorine test was taken back: a reserve counts as mains water again, the system is as without it. */
    public void withdrawn(Instant at, String vessel, Instant testedAt, double totalMgL) {
        ReserveBatch batch = batches.get(vessel);
        if (batch != null) {
            batch.doubted(at);
        } else {
            balance.untested(testedAt, totalMgL);
            judgedAt = null;
        }
    }

    /**
     * One tick: loss since the last, then what each finding says has come in.
     *
     * @param spilling whether a vessel of the system runs over
     */
    public void tick(Instant at, Map<String, FlowFinding> findings, SystemVolume volume, boolean spilling) {
        balance.tick(at, volume, spilling);
        boolean flows = false;
        boolean seen = false;
        for (Map.Entry<String, FlowFinding> entry : findings.entrySet()) {
            flows |= take(at, entry.getKey(), entry.getValue());
            seen |= !batches.containsKey(entry.getKey()) && entry.getValue().verdict() != FlowFinding.Verdict.LEARNING;
        }
        blind = !seen;
        double likely = balance.residual().likelyMgL();
        laggedMgL += (likely - laggedMgL) * (1 - StrictMath.exp(-TICK_S / LAG_S));
        flowedAt = flows ? at : flowedAt;
        boolean calm = !lately(at) && !(signals.riseSigmas() > CALM_SIGMAS);
        Instant before = judgedAt;
        boolean due = before == null || !at.isBefore(before.plus(calm ? CALM_EVERY : BUSY_EVERY));
        if (due || flows != flowing) {
            judgedAt = at;
            current = judge(at);
        }
        flowing = flows;
    }

    private boolean lately(Instant at) {
        Instant flowed = flowedAt;
        return flowed != null && at.isBefore(flowed.plus(LATELY));
    }

    private boolean take(Instant at, String vessel, FlowFinding finding) {
        Instant since = finding.since();
        boolean flows = switch (finding.verdict()) {
            case PLANNED, UNPLANNED_INFLOW, LINE_NOT_SHUT -> since != null;
            case LEARNING, QUIET, UNPLANNED_LOSS, DRAIN_DOWN -> false;
        };
        if (batches.containsKey(vessel)) {
            return false;
        }
        String lent = vessel + OF_RESERVE;
        if (!flows || since == null) {
            balance.ended(vessel);
            balance.ended(lent);
            return false;
        }
        if (finding.volumeL() < 0) {
            return false;
        }
        FlowSources.Brought brought = sources.brought(at, vessel, since, finding);
        balance.inflow(vessel, brought.inflow());
        Inflow ofReserve = brought.ofReserve();
        if (ofReserve == null) {
            balance.dropped(lent);
        } else {
            balance.inflow(lent, ofReserve);
        }
        return true;
    }

    /** The estimate of the last tick. */
    public ResidualEstimate estimate() {
        ResidualEstimate latest = current;
        return latest == null
                ? new ResidualEstimate(0, 0, 0, 0, null, List.of("Nothing heard yet; nothing can be said"))
                : latest;
    }

    private ResidualEstimate judge(Instant at) {
        Residual residual = balance.residual();
        double balanced = residual.likelyMgL() * 1000;
        Belief belief = balance.belief();
        Posterior posterior = new Posterior(belief, signals.orpFitted() ? told : null, unseen(at), acuteUgL);
        List<String> lines = new ArrayList<>();
        lines.add(balanceWords() + "; by this alone the chance is " + Figures.of(100 * posterior.passed(), 0) + " %");
        Evidence evidence = new Evidence(signals, site.mains());
        double arrived = balanced > 0.1 ? StrictMath.min(2, laggedMgL * 1000 / balanced) : 1;
        double share = lately(at)
                ? StrictMath.min(1, balance.enteredL() / balance.systemL().likelyL())
                : 0;
        evidence.weigh(at, posterior, arrived, share);
        lines.addAll(evidence.lines());
        learn(at, belief, evidence.heard());
        double probability = posterior.passed();
        climbing = climbing(at, posterior);
        double low = posterior.quantile(0.05);
        double likely = posterior.quantile(0.5);
        // what the probes say against chlorine lowers no high end: a dose is reckoned by it, and a probe may be fouled
        double high = StrictMath.max(residual.highMgL() * 1000, posterior.quantile(0.95));
        Forecast forecast = new Forecast(balance);
        Crossing acute = forecast.crossing(at, acuteUgL);
        Crossing chronic = forecast.crossing(at, chronicUgL);
        Instant acuteAt = acute.rising() && residual.likelyMgL() * 1000 < acuteUgL ? acute.likely() : null;
        return new ResidualEstimate(low, likely, high, probability, acuteAt, lines, acute, chronic, balanced);
    }

    private void learn(Instant at, Belief belief, @Nullable Likelihood heard) {
        Duration held = learnedAt == null ? LEARN_EVERY : Duration.between(learnedAt, at);
        if (held.compareTo(LEARN_EVERY) < 0) {
            return;
        }
        learnedAt = at;
        String sources = balance.sources();
        if (!sources.isEmpty() && !sources.equals(learnedOf)) {
            // another strength, with another spread: what was told of the amount does not hold for it
            told.forget();
            learnedOf = sources;
        }
        if (belief.mostMgL() < LEAST_LEARNED_MG_L) {
            told.forget();
        } else if (heard != null) {
            // what is older than the calm's rhythm held over a gap, unheard
            Duration counted = held.compareTo(CALM_EVERY) > 0 ? CALM_EVERY : held;
            told.learn(belief, heard, counted.toMillis() / 3_600_000.0);
        }
    }

    /** More while levels are not heard; once the balance had half an hour it has seen the larger inflows. */
    private Unseen unseen(Instant at) {
        if (site.mains().disinfectant() == Disinfectant.NONE) {
            return Unseen.NONE;
        }
        if (blind) {
            return new Unseen(UNSEEN_BLIND, Double.POSITIVE_INFINITY);
        }
        Instant since = signals.highSince();
        boolean seenByNow = since != null && since.isBefore(at.minus(SEEN_BY));
        double half = HALF_SEEN_L
                * site.mains().residualMgL()
                * 1000
                / balance.systemL().likelyL();
        return new Unseen(UNSEEN, seenByNow ? half : Double.POSITIVE_INFINITY);
    }

    private boolean climbing(Instant at, Posterior posterior) {
        Instant since = signals.highSince();
        boolean lately = since != null && !since.isBefore(at.minus(SEEN_BY));
        boolean heard = signals.orpHearing(at) == WaterSignals.Hearing.GOOD;
        return lately && heard && balance.enteredL() < 1 && posterior.above(CLIMB_UG_L) >= CLIMB_SURE;
    }

    /** Whether the potential climbs as chlorine would make it, before the balance has had time to see an inflow. */
    public boolean climbing() {
        return climbing;
    }

    private String balanceWords() {
        if (balance.enteredL() >= 1) {
            Litres held = balance.systemL();
            Litres in = balance.entered();
            return "Balance: " + Figures.of(in.likelyL(), 0) + " L (" + Figures.of(in.lowL(), 0) + " to "
                    + Figures.of(in.highL(), 0) + " L) came in, system holds "
                    + Figures.of(held.likelyL(), 0) + " L (" + Figures.of(held.lowL(), 0) + " to "
                    + Figures.of(held.highL(), 0) + ")" + (balance.unknownSource() ? UNKNOWN_KIND : "");
        }
        if (balance.residual().highMgL() > SPENT_MG_L) {
            return "Balance: what came in before is likely gone, but may not all be";
        }
        return blind
                ? "Balance: no level of the system to judge by, so water may come in unseen"
                : "Balance: no water known to have come in";
    }

    /** The potential rises with nothing in the balance to explain it; null where it does not. */
    public @Nullable OrpFinding orpFinding(Instant at) {
        Instant since = signals.highSince();
        WaterSignals.Hearing hearing = signals.orpHearing(at);
        boolean heard = hearing == WaterSignals.Hearing.GOOD || hearing == WaterSignals.Hearing.JUMPED;
        boolean explained = balance.residual().likelyMgL() * 1000 > 1;
        if (since == null || !heard || explained || signals.riseSigmas() < RISE_SIGMAS || signals.riseMv() < RISE_MV) {
            return null;
        }
        boolean jumped = hearing == WaterSignals.Hearing.JUMPED;
        String why = (blind ? "No level is heard to judge an inflow by. " : "The balance sees no water come in. ")
                + (jumped
                        ? "It jumped within a minute, faster than the water mixes: the probe was lifted or moved, or"
                                + " something was dosed beside it."
                        : "It climbs as an oxidant would let it: peroxide, ozone, permanganate, or chlorinated water"
                                + " that no level shows.");
        return new OrpFinding(since, signals.riseMv(), signals.riseSigmas(), jumped, why);
    }
}
