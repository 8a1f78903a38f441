package bywash.rules.chlorine;

import bywash.rules.water.LossRate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * What the balance alone has one believe of the residual: one {@link Case} for each answer to two questions that change all else.
 * Is water of unknown source mains water? Did a dechlorinator do what its label says? Nothing is known of how often either is not
 * so; four in five and nine in ten are assumed, without a source. Tests move the shares.
 */
final class Belief {
    /** Share of inflows of unknown source that are not mains water; assumed. */
    static final double OTHER_WATER = 0.2;

    /** Share of doses that did nothing: stale, unmixed, spilt; assumed. */
    static final double DOSE_FAILS = 0.1;

    /** So many cases at most: two while nothing was dosed. */
    static final int MOST = 4;

    private static final double IMPOSSIBLE = 1e-12;

    /** In this order: mains and other water where a dose works, then where it does not. */
    private final List<Case> cases;

    private Belief(List<Case> cases) {
        this.cases = List.copyOf(cases);
    }

    /** Clean water. */
    static Belief clean() {
        return of(Case::clean);
    }

    /** A residual of which no more is known than its range, the ends its 5 and 95 % points. */
    static Belief of(Residual residual) {
        return of(share -> Case.of(share, residual));
    }

    private static Belief of(DoubleFunction<Case> make) {
        return new Belief(List.of(make.apply(1 - OTHER_WATER), make.apply(OTHER_WATER)));
    }

    /** Whether water of unknown source is mains water in a case. */
    static boolean isMains(int i) {
        return (i & 1) == 0;
    }

    private static boolean works(int i) {
        return (i & 2) == 0;
    }

    List<Case> cases() {
        return cases;
    }

    /** The highest of any case and rate, mg/L. */
    double mostMgL() {
        return cases.stream().mapToDouble(Case::most).max().orElse(0);
    }

    private interface Change {
        Case of(int i, Case before);
    }

    private Belief each(Change change) {
        List<Case> all = new ArrayList<>(MOST);
        for (int i = 0; i < cases.size(); i++) {
            all.add(change.of(i, cases.get(i)));
        }
        return new Belief(all);
    }

    Belief after(LossRate loss, double hours) {
        return hours <= 0 ? this : each((i, c) -> c.after(loss, hours));
    }

    /**
     * With an inflow that ended some time ago.
     *
     * @param hours since then
     */
    Belief with(Inflow inflow, Litres systemL, LossRate loss, double hours) {
        double keep = 1
                - inflow.litres().likelyL()
                        / StrictMath.max(systemL.likelyL(), inflow.litres().likelyL());
        Case mains = inflow.adds(inflow.ifMains(), systemL, loss).after(loss, hours);
        Case other = inflow.adds(inflow.ifOther(), systemL, loss).after(loss, hours);
        return each((i, c) -> c.diluted(keep).plus(isMains(i) ? mains : other));
    }

    /** Another water may come in, of which no test has shown anything. */
    Belief ofOtherWater() {
        double both = 0;
        double mains = 0;
        for (int i = 0; i < cases.size(); i++) {
            both += cases.get(i).share();
            mains += isMains(i) ? cases.get(i).share() : 0;
        }
        double toMains = mains > 0 ? (1 - OTHER_WATER) * both / mains : 1;
        double toOther = both > mains ? OTHER_WATER * both / (both - mains) : 1;
        return each((i, c) -> c.withShare(c.share() * (isMains(i) ? toMains : toOther)));
    }

    /** A dechlorinator that can take so much, mg/L. */
    Belief dosed(double takesMgL) {
        return split().each((i, c) -> works(i) ? c.less(takesMgL) : c);
    }

    private Belief split() {
        if (cases.size() == MOST) {
            return this;
        }
        List<Case> all = new ArrayList<>(MOST);
        cases.forEach(c -> all.add(c.withShare(c.share() * (1 - DOSE_FAILS))));
        cases.forEach(c -> all.add(c.withShare(c.share() * DOSE_FAILS)));
        return new Belief(all);
    }

    /** A test; one that nothing here foresaw replaces all. */
    Belief tested(double totalMgL, double errorMgL) {
        double sd = errorMgL / Case.Z95;
        Belief moved = each((i, c) -> c.tested(totalMgL, sd));
        double sum = moved.cases.stream().mapToDouble(Case::share).sum();
        if (!(sum * sd > IMPOSSIBLE)) {
            return of(Residual.between(totalMgL - errorMgL, totalMgL, totalMgL + errorMgL));
        }
        return moved.each((i, c) -> c.withShare(c.share() / sum));
    }
}
