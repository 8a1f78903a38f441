package bywash.rules.chlorine;

import bywash.rules.detect.FlowFinding;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Site;
import bywash.rules.site.SystemVolume;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.LossFit;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Follows the residual in the system: what came in by the balance, at the strength of its source, less decay. */
public final class ResidualTracker {
    private final Site site;
    private final SystemBalance balance;
    private final OrpBaseline orp = new OrpBaseline();
    private final TreeMap<String, ReserveBatch> batches = new TreeMap<>();
    private @Nullable Instant inflowSince;

    public ResidualTracker(Site site) {
        this.site = site;
        boolean chloramine = site.mains().disinfectant() == Disinfectant.CHLORAMINE;
        this.balance = new SystemBalance(chloramine ? SystemLoss.CHLORAMINE : SystemLoss.CHLORINE);
        for (Vessel reserve : site.vessels(VesselRole.RESERVE)) {
            batches.put(reserve.id(), new ReserveBatch(reserve.id(), site.mains(), reserve.volumeL()));
        }
    }

    public @Nullable ReserveBatch batch(String reserve) {
        return batches.get(reserve);
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

    public OrpBaseline orp() {
        return orp;
    }

    /** A total-chlorine test, of a reserve or of the system. */
    public void tested(String vessel, Instant at, double totalMgL) {
        ReserveBatch batch = batches.get(vessel);
        if (batch != null) {
            batch.tested(at, totalMgL);
        } else {
            balance.tested(totalMgL, StrictMath.max(LossFit.LEAST_READING_MG_L, 0.1 * totalMgL));
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
        for (Map.Entry<String, FlowFinding> entry : findings.entrySet()) {
            flows |= take(at, entry.getKey(), entry.getValue());
        }
        if (flows && inflowSince == null) {
            inflowSince = at;
        } else if (!flows && balance.residual().likelyMgL() < 1e-3) {
            inflowSince = null;
        }
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
        if (!flows || since == null) {
            balance.ended(vessel);
            return false;
        }
        double litres = StrictMath.max(0, finding.volumeL());
        double error = 2 * StrictMath.max(0, finding.volumeSeL());
        balance.inflow(
                vessel,
                new Inflow(
                        since,
                        at,
                        new Litres(StrictMath.max(0, litres - error), litres, litres + error),
                        StrictMath.max(0, finding.rateLMin()),
                        strength(at, finding.source()),
                        finding.source()));
        return true;
    }

    private Residual strength(Instant at, String source) {
        ReserveBatch batch = batches.get(source);
        return batch != null ? batch.residual(at) : Residual.ofUnknownSource(site.mains());
    }

    /** The estimate at {@code at}. */
    public ResidualEstimate estimate(@Nullable Instant at, boolean orpExpected) {
        Residual residual = balance.residual();
        double low = residual.lowMgL() * 1000;
        double likely = residual.likelyMgL() * 1000;
        double high = residual.highMgL() * 1000;
        List<String> evidence = new ArrayList<>();
        evidence.add(
                balance.enteredL() < 1
                        ? "Balance: no water known to have come in"
                        : String.format(
                                Locale.ROOT,
                                "Balance: %.0f L came in, system holds %.0f L (%.0f to %.0f)",
                                balance.enteredL(),
                                balance.systemL().likelyL(),
                                balance.systemL().lowL(),
                                balance.systemL().highL()));
        double ratio = orpRatio(at, orpExpected, evidence);
        double prior = Exceedance.probability(low, likely, high, ResidualEstimate.ACUTE_UG_L);
        double odds = prior / StrictMath.max(1e-9, 1 - prior) * ratio;
        double probability = odds / (1 + odds);
        if (at == null) {
            return new ResidualEstimate(low, likely, high, probability, null, evidence);
        }
        Forecast forecast = new Forecast(balance);
        Crossing acute = forecast.crossing(at, ResidualEstimate.ACUTE_UG_L);
        Crossing chronic = forecast.crossing(at, ResidualEstimate.CHRONIC_UG_L);
        Instant acuteAt = acute.rising() && likely < ResidualEstimate.ACUTE_UG_L ? acute.likely() : null;
        return new ResidualEstimate(low, likely, high, probability, acuteAt, evidence, acute, chronic);
    }

    private double orpRatio(@Nullable Instant at, boolean expected, List<String> evidence) {
        Instant seen = orp.last();
        if (!expected || at == null || seen == null || seen.isBefore(at.minusSeconds(300))) {
            evidence.add("ORP: no reading, so less is certain (weight 1)");
            return 1;
        }
        if (!orp.learned()) {
            evidence.add("ORP: baseline still being learned (weight 1)");
            return 1;
        }
        double sigmas = orp.riseSigmas();
        boolean settled = inflowSince != null && inflowSince.isBefore(at.minusSeconds(600));
        double ratio = sigmas > 6 ? 20 : sigmas > 3 ? 5 : sigmas < 1 && settled ? 0.3 : 1;
        evidence.add(String.format(
                Locale.ROOT,
                "ORP: %+.0f mV, %+.1f sigma from its baseline (weight %.1f)",
                orp.riseMv(),
                sigmas,
                ratio));
        return ratio;
    }
}
