package bywash.rules.chlorine;

import bywash.rules.site.SystemVolume;
import bywash.rules.water.LossRate;
import java.time.Duration;
import java.time.Instant;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Total residual chlorine in the mixed system water, as a range, by mass balance with the closed forms of {@link
 * bywash.rules.water.MixedTank}. A running inflow counts as evenly spread from its onset to now and is worked out anew each
 * time, so that a better estimate of its litres replaces the older one; when it ends, what it added stays and is lost at the
 * system's rate. The low end takes the fewest litres, the weakest source, the most water and the fastest loss; the high end the
 * contrary.
 */
final class SystemBalance {
    private final LossRate loss;
    private final TreeMap<String, Inflow> running = new TreeMap<>();
    private final TreeMap<String, Instant> endedAt = new TreeMap<>();
    private Residual settled = Residual.ZERO;
    private Litres systemL = Litres.of(1);
    private boolean spilling;
    private @Nullable Instant last;
    private Litres endedL = Litres.of(0);

    SystemBalance(LossRate loss) {
        this.loss = loss;
    }

    /** Time passes; the volume and whether a vessel spills are as known now. */
    void tick(Instant at, SystemVolume volume, boolean spills) {
        systemL = new Litres(volume.lowL(), volume.likelyL(), volume.highL());
        spilling = spills;
        Instant before = last;
        last = at;
        if (before != null) {
            settled = settled.after(loss, hours(before, at));
        }
        if (running.isEmpty() && settled.likelyMgL() < 1e-3) {
            endedL = Litres.of(0);
        }
    }

    /** What an inflow into a vessel has brought up to now. */
    void inflow(String vessel, Inflow inflow) {
        Inflow before = running.get(vessel);
        if (before != null && !before.since().equals(inflow.since())) {
            ended(vessel);
        }
        Instant from = endedAt.get(vessel);
        running.put(vessel, from == null || !from.isAfter(inflow.since()) ? inflow : later(inflow, from));
    }

    /** Cuts off what an earlier inflow has already counted. */
    private static Inflow later(Inflow inflow, Instant from) {
        double whole = inflow.minutes();
        Instant since = from.isBefore(inflow.until()) ? from : inflow.until();
        double share = hours(since, inflow.until()) * 60 / whole;
        Litres l = inflow.litres();
        Litres cut = new Litres(l.lowL() * share, l.likelyL() * share, l.highL() * share);
        return new Inflow(since, inflow.until(), cut, inflow.rateLMin(), inflow.source(), inflow.sourceWords());
    }

    /** Nothing runs into this vessel any more. */
    void ended(String vessel) {
        Inflow inflow = running.remove(vessel);
        if (inflow != null) {
            double since = last == null ? 0 : hours(inflow.until(), last);
            Residual added = inflow.adds(systemL, loss, spilling).after(loss, since);
            settled = plus(dilute(settled, inflow), added);
            endedAt.put(vessel, inflow.until());
            endedL = endedL.plus(inflow.litres());
        }
    }

    private Residual dilute(Residual old, Inflow inflow) {
        double keep = 1
                - inflow.litres().lowL()
                        / StrictMath.max(systemL.highL(), inflow.litres().lowL());
        double likely = 1
                - inflow.litres().likelyL()
                        / StrictMath.max(systemL.likelyL(), inflow.litres().likelyL());
        double most = 1
                - inflow.litres().highL()
                        / StrictMath.max(systemL.lowL(), inflow.litres().highL());
        return Residual.between(old.lowMgL() * most, old.likelyMgL() * likely, old.highMgL() * keep);
    }

    private static Residual plus(Residual a, Residual b) {
        return Residual.between(a.lowMgL() + b.lowMgL(), a.likelyMgL() + b.likelyMgL(), a.highMgL() + b.highMgL());
    }

    /** The residual now. */
    Residual residual() {
        Residual sum = settled;
        for (Inflow inflow : running.values()) {
            sum = plus(dilute(sum, inflow), inflow.adds(systemL, loss, spilling));
        }
        return sum;
    }

    /** A test of the system water: the estimate is narrowed to it, or replaced where they do not agree. */
    void tested(double totalMgL, double errorMgL) {
        running.keySet().stream().toList().forEach(this::ended);
        double low = StrictMath.max(0, totalMgL - errorMgL);
        double high = totalMgL + errorMgL;
        boolean agree = settled.lowMgL() <= high && settled.highMgL() >= low;
        if (agree) {
            low = StrictMath.max(low, settled.lowMgL());
            high = StrictMath.min(high, settled.highMgL());
        }
        double likely = StrictMath.max(low, StrictMath.min(high, agree ? settled.likelyMgL() : totalMgL));
        settled = Residual.between(low, likely, high);
    }

    /** The test that narrowed it is taken back: whatever was believed before may hold as well. */
    void widened(Residual before) {
        running.keySet().stream().toList().forEach(this::ended);
        settled = Residual.between(
                StrictMath.min(settled.lowMgL(), before.lowMgL()),
                StrictMath.max(settled.likelyMgL(), before.likelyMgL()),
                StrictMath.max(settled.highMgL(), before.highMgL()));
    }

    /**
     * A dechlorinator went in: the likely value falls by what it can remove (mg as Cl2), the low end to zero; the high end
     * stays, since nothing shows that it was mixed, fresh and enough. A test brings it down.
     */
    void dosed(double removesMg) {
        running.keySet().stream().toList().forEach(this::ended);
        double likely = StrictMath.max(0, settled.likelyMgL() - removesMg / systemL.likelyL());
        settled = Residual.between(0, likely, settled.highMgL());
    }

    /** Inflows that run now. */
    Iterable<Inflow> running() {
        return running.values();
    }

    /** Litres that came in since the system was last clean. */
    Litres entered() {
        Litres sum = endedL;
        for (Inflow inflow : running.values()) {
            sum = sum.plus(inflow.litres());
        }
        return sum;
    }

    double enteredL() {
        return entered().likelyL();
    }

    Litres systemL() {
        return systemL;
    }

    LossRate loss() {
        return loss;
    }

    private static double hours(Instant from, Instant to) {
        return StrictMath.max(0, Duration.between(from, to).toMillis() / 3_600_000.0);
    }
}
