package bywash.tui.bench;

import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.Chores;
import bywash.samples.simulation.SiteModel;
import bywash.samples.simulation.SiteRun;
import bywash.samples.simulation.SiteSink;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Rules that one would try first, each set to the least threshold that cries not once in 30 quiet days of the very site.
 * What the two charts of control theory take is the level less its mean of the hour before, in standard deviations of
 * that difference over about a day.
 */
final class NaiveRules implements SiteSink {
    /** What is held against a threshold. */
    enum Rule {
        /** The level itself. */
        LEVEL,
        /** Mean of the last 5 min less that of the hour before. */
        MEANS,
        /** Upper sum of a CUSUM with an allowance of half a standard deviation. */
        CUSUM,
        /** Exponentially weighted average, weight 0.1. */
        EWMA
    }

    private static final int YOUNG = 30;
    private static final int OLD = 360;
    private static final double ALLOWANCE = 0.5;
    private static final double WEIGHT = 0.1;
    private static final double DAY_SAMPLES = 8640;

    private final double[] ring = new double[YOUNG + OLD];
    private final double[] before = {Double.NaN, Double.NaN};
    private final Cusum cusum = new Cusum(ALLOWANCE);
    private final Ewma ewma = new Ewma(WEIGHT);
    private int count;
    private double young;
    private double old;
    private double varianceMm2 = 1;
    private final double[] now = new double[Rule.values().length];

    private NaiveRules() {
        Arrays.fill(now, Double.NEGATIVE_INFINITY);
    }

    private static final Map<List<Object>, double[]> KNOWN = new ConcurrentHashMap<>();

    /** Greatest value of each rule in the quiet month. */
    private static double[] limits(SiteModel site, long seed) {
        return KNOWN.computeIfAbsent(List.of(site, seed), key -> quiet(site, seed));
    }

    private static double[] quiet(SiteModel site, long seed) {
        NaiveRules rules = new NaiveRules();
        SiteRun run = new SiteRun(site, Chores.quiet(site, 30), BalanceSink.START, seed, rules);
        double[] most = rules.now.clone();
        for (long s = 0; s < 30 * 86_400L; s++) {
            run.step();
            for (int i = 0; i < most.length; i++) {
                most[i] = StrictMath.max(most[i], rules.now[i]);
            }
        }
        return most;
    }

    /** Minutes until each rule cries, in the order of {@link Rule}; NaN where it does not. */
    static double[] delays(SiteModel site, List<Action> actions, long seed, double onsetMin, double mostMin) {
        double[] limits = limits(site, seed);
        NaiveRules rules = new NaiveRules();
        SiteRun run = new SiteRun(site, actions, BalanceSink.START, seed, rules);
        double[] delays = new double[limits.length];
        Arrays.fill(delays, Double.NaN);
        for (long s = 0; s < (onsetMin + mostMin) * 60; s++) {
            run.step();
            double since = s / 60.0 - onsetMin;
            for (int i = 0; i < delays.length; i++) {
                if (since >= 0 && Double.isNaN(delays[i]) && rules.now[i] > limits[i]) {
                    delays[i] = since;
                }
            }
        }
        return delays;
    }

    @Override
    public void level(String vessel, Instant at, double mm) {
        if (!vessel.equals("sump")) {
            return;
        }
        double median = median(mm);
        int n = ring.length;
        if (count >= YOUNG) {
            double passes = ring[(count - YOUNG) % n];
            young -= passes;
            old += passes;
        }
        if (count >= n) {
            old -= ring[count % n];
        }
        ring[count % n] = median;
        young += median;
        count++;
        now[Rule.LEVEL.ordinal()] = median;
        if (count >= n) {
            now[Rule.MEANS.ordinal()] = young / YOUNG - old / OLD;
            charts(median - old / OLD);
        }
    }

    private double median(double mm) {
        double least = StrictMath.min(before[0], StrictMath.min(before[1], mm));
        double most = StrictMath.max(before[0], StrictMath.max(before[1], mm));
        double median = Double.isNaN(least) ? mm : before[0] + before[1] + mm - least - most;
        before[0] = before[1];
        before[1] = mm;
        return median;
    }

    private void charts(double differenceMm) {
        double gain = StrictMath.max(1 / DAY_SAMPLES, 1.0 / (count - ring.length + 2));
        varianceMm2 += gain * (differenceMm * differenceMm - varianceMm2);
        double z = differenceMm / StrictMath.sqrt(varianceMm2);
        cusum.add(z);
        now[Rule.CUSUM.ordinal()] = cusum.high();
        now[Rule.EWMA.ordinal()] = ewma.add(z);
    }

    @Override
    public void pump(Instant at, boolean on) {
        // a naive rule does not ask
    }

    @Override
    public void entry(OperatorEntry entry) {
        // nor does it read the log
    }

    @Override
    public void quality(Instant at, WaterSample sample) {
        // nor look at the fish
    }
}
