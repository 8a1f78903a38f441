package bywash.rules.chlorine;

import bywash.rules.chlorine.BalanceStep.Came;
import bywash.rules.chlorine.BalanceStep.Dosed;
import bywash.rules.chlorine.BalanceStep.Tested;
import bywash.rules.water.LossRate;
import java.time.Duration;
import java.time.Instant;

/**
 * The residual once all is mixed that has come in.
 *
 * @param unknownUntil when the last inflow of unknown source ended
 * @param range from the fewest litres, the weakest source, the most water and the fastest loss to the contrary
 * @param belief the same as a distribution
 */
record Settled(Instant at, Instant unknownUntil, Residual range, Belief belief) {
    static final Settled CLEAN = new Settled(Instant.EPOCH, Instant.EPOCH, Residual.ZERO, Belief.clean());

    /** An inflow that begins so much later is other water, of which nothing was shown yet. */
    private static final Duration SAME_WATER = Duration.ofHours(1);

    /** A residual of which no more is known than its range. */
    static Settled of(Instant at, Residual range) {
        return range.highMgL() == 0 ? CLEAN : new Settled(at, Instant.EPOCH, range, Belief.of(range));
    }

    /** Later, with nothing else come in; a time before it changes nothing. */
    Settled after(LossRate loss, Instant later) {
        if (!later.isAfter(at)) {
            return this;
        }
        double hours = Duration.between(at, later).toMillis() / 3_600_000.0;
        return range.highMgL() == 0
                ? new Settled(later, unknownUntil, range, belief)
                : new Settled(later, unknownUntil, range.after(loss, hours), belief.after(loss, hours));
    }

    Settled then(BalanceStep step, LossRate loss) {
        Settled before = after(loss, step.at());
        return switch (step.kind()) {
            case CAME -> before.came((Came) step, loss);
            case TESTED -> before.tested((Tested) step);
            case DOSED -> before.dosed((Dosed) step);
        };
    }

    /** With an inflow that ended now or before. */
    Settled came(Came came, LossRate loss) {
        Inflow inflow = came.inflow();
        double hours = StrictMath.max(0, Duration.between(inflow.until(), at).toMillis() / 3_600_000.0);
        Residual added = inflow.adds(came.systemL(), loss, came.spilling()).after(loss, hours);
        boolean other = inflow.unknown() && inflow.since().isAfter(unknownUntil.plus(SAME_WATER));
        Belief before = other ? belief.ofOtherWater() : belief;
        return new Settled(
                at,
                inflow.unknown() ? inflow.until() : unknownUntil,
                plus(diluted(came), added),
                before.with(inflow, came.systemL(), loss, hours));
    }

    private Residual diluted(Came came) {
        Litres in = came.inflow().litres();
        Litres held = came.systemL();
        return Residual.between(
                range.lowMgL() * (1 - in.highL() / StrictMath.max(held.lowL(), in.highL())),
                range.likelyMgL() * (1 - in.likelyL() / StrictMath.max(held.likelyL(), in.likelyL())),
                range.highMgL() * (1 - in.lowL() / StrictMath.max(held.highL(), in.lowL())));
    }

    private static Residual plus(Residual a, Residual b) {
        return Residual.between(a.lowMgL() + b.lowMgL(), a.likelyMgL() + b.likelyMgL(), a.highMgL() + b.highMgL());
    }

    /** The range is narrowed to the test, or replaced where they do not agree. */
    private Settled tested(Tested test) {
        double low = StrictMath.max(0, test.totalMgL() - test.errorMgL());
        double high = test.totalMgL() + test.errorMgL();
        boolean agree = range.lowMgL() <= high && range.highMgL() >= low;
        if (agree) {
            low = StrictMath.max(low, range.lowMgL());
            high = StrictMath.min(high, range.highMgL());
        }
        double likely = StrictMath.max(low, StrictMath.min(high, agree ? range.likelyMgL() : test.totalMgL()));
        Residual narrowed = Residual.between(low, likely, high);
        Belief after = agree ? belief.tested(test.totalMgL(), test.errorMgL()) : Belief.of(narrowed);
        return new Settled(at, unknownUntil, narrowed, after);
    }

    /**
     * The likely value falls by what a dechlorinator can remove, the low end to zero; the high end stays, since nothing shows
     * that it was mixed, fresh and enough. A test brings it down.
     */
    private Settled dosed(Dosed dose) {
        double takes = dose.removesMg() / dose.systemL().likelyL();
        double likely = StrictMath.max(0, range.likelyMgL() - takes);
        return new Settled(at, unknownUntil, Residual.between(0, likely, range.highMgL()), belief.dosed(takes));
    }
}
