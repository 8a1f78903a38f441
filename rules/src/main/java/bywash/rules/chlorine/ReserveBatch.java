package bywash.rules.chlorine;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.water.DechlorinationDose;
import bywash.rules.water.LossFit;
import bywash.rules.water.LossRate;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What stands in one reserve: its residual as a range, what was done to it, and whether a test has shown it safe. Without
 * a known filling it counts as mains water. New water is mixed into the old by mass balance, with the litres of the level
 * probe where there is one, else with those declared and the old volume unknown; it always takes the safety away.
 */
public final class ReserveBatch {
    /** A total-chlorine test at or under this counts as zero, mg/L: the resolution of a DPD kit. */
    public static final double ZERO_MG_L = LossFit.LEAST_READING_MG_L;

    private static final double TEST_ERROR = 0.10;
    private static final Duration CLAIM_BACK = Duration.ofHours(12);
    private static final Duration CLAIM_AHEAD = Duration.ofHours(2);

    private final String vessel;
    private final Mains mains;
    private final double capacityL;
    private final FillMeter meter = new FillMeter();
    private final List<BatchStep> steps = new ArrayList<>();
    private final List<LossFit.Test> tests = new ArrayList<>();
    private Residual residual;
    private LossRate rate;
    private Treatment treatment = Treatment.STANDING;
    private @Nullable Instant asOf;
    private @Nullable Instant filledAt;
    private @Nullable Instant claimed;
    private @Nullable Instant awaited;
    private double awaitedL;
    private double mixedL = Double.NaN;
    private double bookedL = Double.NaN;
    private boolean declared;
    private boolean confirmed;
    private double ammoniaMgL;

    /** @param capacityL what the reserve holds at its overflow, L */
    public ReserveBatch(String vessel, Mains mains, double capacityL) {
        this.vessel = vessel;
        this.mains = mains;
        this.capacityL = capacityL;
        this.residual = Residual.ofUnknownSource(mains);
        this.rate = Treatment.STANDING.rate(mains.disinfectant());
    }

    /** A level of the reserve, as the volume its shape holds. */
    public void level(Instant at, double volumeL) {
        Instant before = meter.riseBegan();
        boolean wasRising = meter.rising();
        meter.level(at, volumeL);
        if (Double.isNaN(meter.volumeL())) {
            return;
        }
        if (meter.rising()) {
            if (!wasRising || before == null) {
                mixedL = meter.beforeL();
                newFilling(at, claims(at));
            }
            rise(at);
        } else {
            mixedL = meter.volumeL();
        }
        Instant until = awaited;
        if (until != null && at.isAfter(until)) {
            awaited = null;
            mix(at, Litres.of(meter.volumeL() - awaitedL), awaitedL);
        }
    }

    private boolean claims(Instant at) {
        boolean claim = awaited != null && !at.isAfter(awaited);
        awaited = claim ? null : awaited;
        claimed = claim ? meter.riseBegan() : claimed;
        return claim;
    }

    private void rise(Instant at) {
        double more = meter.volumeL() - mixedL;
        if (more > 1) {
            mix(at, Litres.of(mixedL), more);
            mixedL = meter.volumeL();
        }
    }

    private void newFilling(Instant at, boolean onRecord) {
        settle(at);
        confirmed = false;
        declared = onRecord;
        filledAt = at;
        tests.clear();
        steps.clear();
        ammoniaMgL = 0;
        treatment = Treatment.STANDING;
        rate = treatment.rate(mains.disinfectant());
    }

    private void mix(Instant at, Litres held, double inL) {
        settle(at);
        confirmed = false;
        residual = residual.mixedWith(held, Residual.ofMains(mains), inL);
    }

    /** The grower says mains water was or is being filled in, L. */
    public void filled(Instant at, double volumeL) {
        Instant rise = meter.riseBegan();
        boolean seen = rise != null && !rise.equals(claimed) && rise.isAfter(at.minus(CLAIM_BACK));
        if (seen) {
            claimed = rise;
            declared = true;
            confirmed = false;
            return;
        }
        newFilling(at, true);
        if (Double.isNaN(meter.volumeL())) {
            boolean unknown = Double.isNaN(bookedL);
            double roomL = StrictMath.max(0, capacityL - volumeL);
            double heldL = StrictMath.min(roomL, unknown ? roomL / 2 : bookedL);
            mix(at, new Litres(0, heldL, roomL), volumeL);
            bookedL = heldL + volumeL;
        } else {
            awaited = at.plus(CLAIM_AHEAD);
            awaitedL = volumeL;
            double high =
                    StrictMath.max(residual.highMgL(), Residual.ofMains(mains).highMgL());
            residual = Residual.between(residual.lowMgL(), residual.likelyMgL(), high);
        }
    }

    /** Water was released, L; counts only where no level is read. */
    public void released(double volumeL) {
        bookedL = Double.isNaN(bookedL) ? bookedL : StrictMath.max(0, bookedL - volumeL);
    }

    /**
     * A treatment began, or an amount was dosed.
     *
     * @param amountG of the chemical, pure; NaN where none was given, which removes nothing on the safe side
     */
    public void treated(Instant at, Treatment how, double amountG) {
        settle(at);
        steps.add(new BatchStep(at, how, amountG));
        if (!how.chemical()) {
            treatment = how;
            rate = how.rate(mains.disinfectant());
        } else if (Double.isNaN(amountG)) {
            residual = Residual.between(0, residual.likelyMgL(), residual.highMgL());
        } else {
            dose(how.removesMg(amountG));
        }
        tests.clear();
    }

    private void dose(Litres removedMg) {
        Litres held = volume();
        double before = residual.likelyMgL();
        residual = Residual.between(
                less(residual.lowMgL(), removedMg.highL(), held.lowL()),
                less(residual.likelyMgL(), removedMg.likelyL(), held.likelyL()),
                less(residual.highMgL(), removedMg.lowL(), held.highL()));
        if (mains.disinfectant() == Disinfectant.CHLORAMINE) {
            ammoniaMgL += (before - residual.likelyMgL()) * DechlorinationDose.NITROGEN_PER_CL2;
        }
    }

    private static double less(double mgL, double removedMg, double litres) {
        return litres <= 0 ? mgL : StrictMath.max(0, mgL - removedMg / litres);
    }

    /** A total-chlorine test, mg/L. */
    public void tested(Instant at, double totalMgL) {
        settle(at);
        double error = StrictMath.max(ZERO_MG_L, TEST_ERROR * totalMgL);
        residual = Residual.between(StrictMath.max(0, totalMgL - error), totalMgL, totalMgL + error);
        confirmed = totalMgL <= ZERO_MG_L;
        asOf = at;
        if (totalMgL >= ZERO_MG_L && totalMgL <= 20) {
            tests.add(new LossFit.Test(at.toEpochMilli() / 3_600_000.0, totalMgL));
        }
        long moments =
                tests.stream().mapToDouble(LossFit.Test::hours).distinct().count();
        if (moments >= 2) {
            rate = LossFit.fit(tests);
        }
    }

    /** What was entered on it was a mistake: it counts as mains water until it is tested again. */
    public void doubted(Instant at) {
        confirmed = false;
        residual = Residual.ofUnknownSource(mains);
        tests.clear();
        asOf = at;
    }

    /** A free-chlorine test: what it finds is there; a zero says nothing of chloramines. */
    public void testedFree(Instant at, double freeMgL) {
        settle(at);
        if (freeMgL > ZERO_MG_L) {
            confirmed = false;
            residual = Residual.between(
                    StrictMath.max(residual.lowMgL(), freeMgL - ZERO_MG_L),
                    StrictMath.max(residual.likelyMgL(), freeMgL),
                    StrictMath.max(residual.highMgL(), freeMgL + ZERO_MG_L));
        }
    }

    private void settle(Instant at) {
        residual = residual(at);
        asOf = at;
    }

    /** The residual at a time not before the last entry. */
    public Residual residual(Instant at) {
        Instant from = asOf;
        return from == null ? residual : residual.after(rate, hours(from, at));
    }

    /** Whether a test has shown it free of chlorine since the last filling, or the mains carries none. */
    public boolean knownSafe() {
        return confirmed || mains.disinfectant() == Disinfectant.NONE;
    }

    Litres volume() {
        if (!Double.isNaN(meter.volumeL())) {
            return Litres.of(meter.volumeL());
        }
        return Double.isNaN(bookedL) ? new Litres(0, capacityL / 2, capacityL) : Litres.of(bookedL);
    }

    /** All that is known at a time, for screens and messages. */
    public BatchView view(Instant at) {
        return BatchView.of(
                vessel,
                at,
                new BatchView.Known(
                        mains.disinfectant(),
                        filledAt,
                        declared,
                        volume(),
                        !Double.isNaN(meter.volumeL()),
                        residual(at),
                        rate,
                        treatment,
                        List.copyOf(steps),
                        tests.size(),
                        confirmed,
                        ammoniaMgL));
    }

    ChlorineMemory.Batch memory() {
        return new ChlorineMemory.Batch(
                vessel,
                meter.memory(),
                steps,
                tests,
                residual,
                rate,
                treatment,
                asOf,
                filledAt,
                claimed,
                awaited,
                awaitedL,
                mixedL,
                bookedL,
                declared,
                confirmed,
                ammoniaMgL);
    }

    void restore(ChlorineMemory.Batch memory) {
        meter.restore(memory.meter());
        steps.clear();
        steps.addAll(memory.steps());
        tests.clear();
        tests.addAll(memory.tests());
        residual = memory.residual();
        rate = memory.rate();
        treatment = memory.treatment();
        asOf = memory.asOf();
        filledAt = memory.filledAt();
        claimed = memory.claimed();
        awaited = memory.awaited();
        awaitedL = memory.awaitedL();
        mixedL = memory.mixedL();
        bookedL = memory.bookedL();
        declared = memory.declared();
        confirmed = memory.confirmed();
        ammoniaMgL = memory.ammoniaMgL();
    }

    /**
     * Its level was read meanwhile, but is not on hand any more: water may have been filled in since what was entered on it. It
     * counts as mains water until it is tested again.
     */
    void unwatched() {
        if (asOf != null) {
            confirmed = false;
            residual = Residual.ofUnknownSource(mains);
            tests.clear();
        }
    }

    private static double hours(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 3_600_000.0;
    }
}
