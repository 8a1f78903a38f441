package bywash.rules.detect;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Keeps book of what each siphon bed holds, from the sump's level alone: every rise is the drain of one bed or of
 * several, and the few best guesses at which are carried along until what follows tells them apart.
 *
 * <p>Source: D. B. Reid, 1979, An algorithm for tracking multiple targets, IEEE Trans. Automatic Control 24(6), 843-854.
 */
final class BedBook {
    private static final int MOST = 32;
    private static final int BRANCHES = 128;
    private static final double WORST = 24;
    private static final double CHUNK_MIN = 1;
    private static final double LEAST_DRAIN_MIN = 0.8;
    private static final int BLOCKS_LEARNED = 30;
    private static final int PATIENCE = 40;
    private static final double GOOD_MISFIT = 1.4;

    /** Guesses so near the best in log likelihood must agree before the book is heard. */
    private static final double LIKELY = 3;

    private static final double LEAST_L_MIN = 0.3;
    /** Means that show a flow know its rate to such a factor, once its onset is given. */
    private static final double ABOUT = 2;

    /** A wrong guess shows as a step that looks like a flow, so the book alone never raises one. */
    private static final double MOST_HEARD = 12;

    private static final double FITTED_MIN = 60;

    private record Misfit(double tMin, double value) {}

    private final ArrayDeque<Misfit> misfits = new ArrayDeque<>();
    private final int beds;
    private List<BedFilter> guesses = new ArrayList<>();
    private double atMin = Double.NaN;
    private double blockStartMin = Double.NaN;
    private double sumT;
    private double sumV;
    private int samples;
    private double firstInChunkMin;
    private double drainMin = 2;
    private int blocks;
    private int startedAt;
    private boolean moving;
    private int heardFrom = BLOCKS_LEARNED;
    /** Worked out when it is asked for, since many ask between two changes of the book; null after a change. */
    private @Nullable Heard heard;

    /** What the likely guesses say for water in and out, with the flow into the beds out by so much. */
    private record Heard(double wanderSdLMin, double in, double out) {}

    BedBook(int beds) {
        this.beds = beds;
    }

    /** One volume while all beds fill. */
    void filling(double tMin, double volumeL, double pumpLMin, double noiseL) {
        if (beds == 0 || !(pumpLMin > 0)) {
            return;
        }
        if (guesses.isEmpty()) {
            guesses.add(new BedFilter(beds, pumpLMin, volumeL));
            atMin = tMin;
        }
        if (samples == 0) {
            firstInChunkMin = tMin;
        }
        sumT += tMin;
        sumV += volumeL;
        samples++;
        if (tMin - firstInChunkMin >= CHUNK_MIN) {
            chunk(noiseL);
        }
    }

    private void chunk(double noiseL) {
        if (samples == 0) {
            return;
        }
        heard = null;
        double t = sumT / samples;
        double v = sumV / samples;
        double variance = noiseL * noiseL / samples + 0.1;
        samples = 0;
        sumT = 0;
        sumV = 0;
        for (BedFilter each : guesses) {
            each.fill(Double.isNaN(atMin) ? 0 : t - atMin);
            if (moving) {
                each.loosenTotal();
            }
            each.observe(t, v, variance);
        }
        atMin = t;
        prune();
        guesses.forEach(BedFilter::tellRamps);
    }

    /** Some bed began to drain about here. */
    void drainBegins(double tMin, double noiseL) {
        if (guesses.isEmpty()) {
            return;
        }
        if (samples >= 1) {
            chunk(noiseL);
        }
        samples = 0;
        sumT = 0;
        sumV = 0;
        blockStartMin = Double.isNaN(atMin) ? tMin : StrictMath.max(atMin, tMin);
    }

    /** No bed drains any more, since about here. */
    void drainsOver(double tMin) {
        if (guesses.isEmpty() || Double.isNaN(blockStartMin)) {
            return;
        }
        heard = null;
        double start = blockStartMin;
        double length = StrictMath.max(0.2, tMin - start);
        blockStartMin = Double.NaN;
        blocks++;
        noteMisfit(tMin);
        if (blocks > startedAt + PATIENCE && fittedMisfit() > GOOD_MISFIT) {
            startAnew();
            return;
        }
        if (blocks == heardFrom) {
            guesses.forEach(each -> each.ramps().clear());
        }
        List<Option> options = new ArrayList<>();
        for (BedFilter each : guesses) {
            each.fill(Double.isNaN(atMin) ? 0 : start - atMin);
            options(each, length, options);
        }
        options.sort((a, b) -> Double.compare(b.log, a.log));
        List<BedFilter> next = new ArrayList<>();
        for (Option each : options.subList(0, StrictMath.min(BRANCHES, options.size()))) {
            next.add(child(each, tMin, length));
        }
        guesses = next;
        atMin = tMin;
    }

    private void noteMisfit(double tMin) {
        misfits.addLast(new Misfit(tMin, guesses.get(0).misfit));
        while (tMin - misfits.getFirst().tMin() > FITTED_MIN) {
            misfits.removeFirst();
        }
    }

    /** The best of the last {@value #FITTED_MIN} minutes: water that comes in spoils the fit as well, and must be heard. */
    private double fittedMisfit() {
        return misfits.stream().mapToDouble(Misfit::value).min().orElse(1);
    }

    /** No guess fits: all went astray together, so they are dropped and the next drains begin a new book. */
    private void startAnew() {
        heard = null;
        guesses.clear();
        misfits.clear();
        atMin = Double.NaN;
        startedAt = blocks;
        heardFrom = blocks + BLOCKS_LEARNED;
    }

    /** Which beds drained, and which of them last. */
    private record Option(BedFilter from, int set, int last, double log) {}

    private void options(BedFilter from, double length, List<Option> options) {
        double none = from.logLikelihood;
        for (int i = 0; i < beds; i++) {
            none += from.fullLog(i);
        }
        for (int set = 1; set < 1 << beds; set++) {
            int size = Integer.bitCount(set);
            if (size > 3 || !sensible(from, set) || size > 1 && length < LEAST_DRAIN_MIN + 0.4) {
                continue;
            }
            double log = none - (size > 1 ? 1 : 0);
            for (int i = 0; i < beds; i++) {
                log += (set >> i & 1) == 1 ? from.tripLog(i) - from.fullLog(i) : 0;
            }
            for (int last = 0; last < beds; last++) {
                if ((set >> last & 1) == 1) {
                    options.add(new Option(from, set, last, log));
                }
            }
        }
    }

    /** Beds that never drained yet are alike: only the first of them is tried. */
    private static boolean sensible(BedFilter from, int set) {
        boolean missed = false;
        for (int i = 0; i < from.beds; i++) {
            boolean fresh = from.drains(i) == 0;
            boolean in = (set >> i & 1) == 1;
            if (fresh && in && missed) {
                return false;
            }
            missed |= fresh && !in;
        }
        return true;
    }

    private BedFilter child(Option option, double endMin, double length) {
        BedFilter to = option.from.copy();
        to.logLikelihood = option.log;
        to.fill(length);
        double free = StrictMath.max(0, length - drainMin);
        for (int i = 0; i < beds; i++) {
            if ((option.set >> i & 1) == 0) {
                continue;
            }
            if (i == option.last) {
                to.drained(i, endMin, 0, 0);
            } else {
                double ago = StrictMath.min(0.5 * free + 0.3, length);
                to.drained(i, endMin, ago, StrictMath.max(0.3, 0.35 * free));
            }
        }
        return to;
    }

    private void prune() {
        guesses.sort((a, b) -> Double.compare(b.logLikelihood, a.logLikelihood));
        double best = guesses.get(0).logLikelihood;
        List<BedFilter> kept = new ArrayList<>();
        for (BedFilter each : guesses) {
            if (kept.size() < MOST && each.logLikelihood > best - WORST && fresh(each, kept)) {
                each.logLikelihood -= best;
                kept.add(each);
            }
        }
        guesses = kept;
    }

    private static boolean fresh(BedFilter each, List<BedFilter> kept) {
        for (BedFilter other : kept) {
            if (java.util.Arrays.equals(each.drainedMin, other.drainedMin)) {
                return false;
            }
        }
        return true;
    }

    /** A planned change: the total is not known any more. */
    void loosenTotal() {
        heard = null;
        guesses.forEach(BedFilter::loosenTotal);
    }

    /** A gap or a pump stop: what the beds hold is not known any more. */
    void loosenBeds() {
        heard = null;
        samples = 0;
        sumT = 0;
        sumV = 0;
        blockStartMin = Double.NaN;
        guesses.forEach(BedFilter::loosenBeds);
        atMin = Double.NaN;
        heardFrom = StrictMath.max(heardFrom, blocks + 3 * beds);
    }

    /** Water is let in as planned, from here on or no more: meanwhile the total may do what it likes. */
    void moving(boolean now) {
        moving = now;
        loosenTotal();
        heardFrom = StrictMath.max(heardFrom, blocks + 2 * beds);
    }

    /**
     * Log likelihood ratio for a flow in the direction of {@code sign} against none, as the least of what the likely
     * guesses say; 0 while the book is not good enough to be heard.
     *
     * @param wanderSdLMin how far the flow into the beds may be out by wandering, L/min
     */
    double logRatio(int sign, double wanderSdLMin) {
        Heard said = heard;
        if (said == null || said.wanderSdLMin() != wanderSdLMin) {
            boolean good = learned();
            said = new Heard(wanderSdLMin, good ? least(true, wanderSdLMin) : 0, good ? least(false, wanderSdLMin) : 0);
            heard = said;
        }
        return sign > 0 ? said.in() : said.out();
    }

    /**
     * Log likelihood ratio for a flow that others show, against none: what all likely guesses say for it or against it; 0 where
     * they differ, or while the book is not good enough to be heard.
     *
     * @param rateSince its signed rate, L/min, if it began then, min; NaN where it cannot have
     */
    double logRatioOf(DoubleUnaryOperator rateSince, double wanderSdLMin) {
        if (!learned()) {
            return 0;
        }
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (BedFilter each : guesses) {
            if (each.logLikelihood > guesses.get(0).logLikelihood - LIKELY) {
                double ratio = each.ramps().logRatio(rateSince, ABOUT, wanderSdLMin) / StrictMath.max(1, each.misfit);
                least = StrictMath.min(least, ratio);
                most = StrictMath.max(most, ratio);
            }
        }
        return least > 0 ? least : StrictMath.min(0, most);
    }

    private double least(boolean in, double wanderSdLMin) {
        double least = Double.POSITIVE_INFINITY;
        for (BedFilter each : guesses) {
            if (each.logLikelihood > guesses.get(0).logLikelihood - LIKELY) {
                RampScores ramps = each.ramps();
                int k = ramps.best(in);
                boolean any = k >= 0 && StrictMath.abs(ramps.rateLMin(k)) >= LEAST_L_MIN;
                least = StrictMath.min(
                        least, any ? ramps.logRatio(k, wanderSdLMin) / StrictMath.max(1, each.misfit) : 0);
            }
        }
        return StrictMath.min(MOST_HEARD, least);
    }

    /** Whether the book is good enough to be heard. */
    boolean learned() {
        return !guesses.isEmpty() && blocks >= heardFrom && fittedMisfit() < GOOD_MISFIT;
    }
}
