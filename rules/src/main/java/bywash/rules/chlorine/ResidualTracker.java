package bywash.rules.chlorine;

import bywash.rules.detect.FlowFinding;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
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
    /** US EPA 440/5-84-030 (1985), criterion maximum concentration, fresh water, one hour, ug/L. */
    public static final double ACUTE_UG_L = 19;

    private static final double MAINS_HIGH = 1.5;

    /** Litres of one inflow already taken into the balance. */
    private record Taken(Instant since, double litres) {}

    private final Site site;
    private final SystemResidual residual = new SystemResidual();
    private final OrpBaseline orp = new OrpBaseline();
    private final TreeMap<String, ReserveBatch> batches = new TreeMap<>();
    private final TreeMap<String, Taken> taken = new TreeMap<>();
    private double enteredL;
    private double rateUgLMin;
    private @Nullable Instant inflowSince;
    private @Nullable Instant last;

    public ResidualTracker(Site site) {
        this.site = site;
        for (Vessel reserve : site.vessels(VesselRole.RESERVE)) {
            batches.put(reserve.id(), new ReserveBatch(site.mains()));
        }
    }

    public @Nullable ReserveBatch batch(String reserve) {
        return batches.get(reserve);
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
    public void tested(String vessel, Instant at, double totalChlorineMgL, double systemL) {
        ReserveBatch batch = batches.get(vessel);
        if (batch != null) {
            batch.tested(at, totalChlorineMgL);
        } else {
            residual.tested(totalChlorineMgL, systemL);
        }
    }

    /** One tick: decay since the last, then what each finding says has come in. */
    public void tick(Instant at, Map<String, FlowFinding> findings) {
        if (last != null) {
            residual.decay(Duration.between(last, at).toMillis() / 3_600_000.0);
        }
        last = at;
        rateUgLMin = 0;
        boolean flows = false;
        for (Map.Entry<String, FlowFinding> entry : findings.entrySet()) {
            flows |= take(at, entry.getKey(), entry.getValue());
        }
        if (flows && inflowSince == null) {
            inflowSince = at;
        } else if (!flows && likelyUgL() < 1) {
            inflowSince = null;
            enteredL = 0;
        }
    }

    private boolean take(Instant at, String vessel, FlowFinding finding) {
        Instant since = finding.since();
        boolean flows = switch (finding.verdict()) {
            case PLANNED, UNPLANNED_INFLOW, LINE_NOT_SHUT -> since != null;
            case LEARNING, QUIET, UNPLANNED_LOSS, DRAIN_DOWN -> false;
        };
        if (!flows || since == null || batches.containsKey(vessel)) {
            return false;
        }
        Taken before = taken.get(vessel);
        double seen = before != null && before.since().equals(since) ? before.litres() : 0;
        double litres = StrictMath.max(0, finding.volumeL() - seen);
        taken.put(vessel, new Taken(since, StrictMath.max(seen, finding.volumeL())));
        double error = finding.volumeL() > 0 ? StrictMath.min(1, 2 * finding.volumeSeL() / finding.volumeL()) : 1;
        double strong = strongMgL(at, finding.source());
        double likely = likelyMgL(at, finding.source());
        residual.inflow(
                litres * (1 - error) * weakMgL(at, finding.source()), litres * likely, litres * (1 + error) * strong);
        enteredL += litres;
        rateUgLMin += StrictMath.max(0, finding.rateLMin()) * likely / site.systemVolumeL() * 1000;
        return true;
    }

    private double strongMgL(Instant at, String source) {
        ReserveBatch batch = batches.get(source);
        if (batch != null) {
            return batch.highMgL(at);
        }
        return site.mains().disinfectant() == Disinfectant.NONE
                ? 0
                : site.mains().residualMgL() * MAINS_HIGH;
    }

    private double likelyMgL(Instant at, String source) {
        ReserveBatch batch = batches.get(source);
        if (batch != null) {
            return batch.knownSafe() ? 0 : (batch.lowMgL(at) + batch.highMgL(at)) / 2;
        }
        return site.mains().disinfectant() == Disinfectant.NONE
                ? 0
                : site.mains().residualMgL();
    }

    private double weakMgL(Instant at, String source) {
        ReserveBatch batch = batches.get(source);
        return batch != null ? batch.lowMgL(at) : 0;
    }

    private double likelyUgL() {
        return residual.likelyUgL(site.systemVolumeL());
    }

    /** The estimate at {@code at}. */
    public ResidualEstimate estimate(@Nullable Instant at, boolean orpExpected) {
        double systemL = site.systemVolumeL();
        double low = residual.lowUgL(systemL);
        double likely = residual.likelyUgL(systemL);
        double high = residual.highUgL(systemL);
        List<String> evidence = new ArrayList<>();
        evidence.add(
                enteredL < 1
                        ? "Balance: no water known to have come in"
                        : String.format(
                                Locale.ROOT, "Balance: %.0f L came in, system holds %.0f L", enteredL, systemL));
        double ratio = orpRatio(at, orpExpected, evidence);
        double prior = Exceedance.probability(low, likely, high, ACUTE_UG_L);
        double odds = prior / StrictMath.max(1e-9, 1 - prior) * ratio;
        Instant acuteAt = null;
        if (at != null && rateUgLMin > 0 && likely < ACUTE_UG_L) {
            acuteAt = at.plusMillis((long) ((ACUTE_UG_L - likely) / rateUgLMin * 60_000));
        }
        return new ResidualEstimate(low, likely, high, odds / (1 + odds), acuteAt, evidence);
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
