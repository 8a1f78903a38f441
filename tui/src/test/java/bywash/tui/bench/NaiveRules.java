package bywash.tui.bench;

import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.Chores;
import bywash.samples.simulation.SiteModel;
import bywash.samples.simulation.SiteRun;
import bywash.samples.simulation.SiteSink;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Two rules that one would try first, each set to the least threshold that cries not once in 30 quiet days of the very
 * site: the level itself, and the mean of the last 5 min less that of the hour before.
 */
final class NaiveRules implements SiteSink {
    private static final int YOUNG = 30;
    private static final int OLD = 360;

    private final double[] ring = new double[YOUNG + OLD];
    private final double[] before = {Double.NaN, Double.NaN};
    private int count;
    private double young;
    private double old;
    private double level = Double.NEGATIVE_INFINITY;
    private double difference = Double.NEGATIVE_INFINITY;

    /** Greatest level and greatest difference of means in the quiet month, mm. */
    record Thresholds(double levelMm, double differenceMm) {}

    /** Minutes until each rule cries; NaN where it does not. */
    record Delays(double byLevel, double byDifference) {}

    private static final Map<List<Object>, Thresholds> KNOWN = new ConcurrentHashMap<>();

    private static Thresholds limits(SiteModel site, long seed) {
        return KNOWN.computeIfAbsent(List.of(site, seed), key -> quiet(site, seed));
    }

    private static Thresholds quiet(SiteModel site, long seed) {
        NaiveRules rules = new NaiveRules();
        SiteRun run = new SiteRun(site, Chores.quiet(site, 30), BalanceSink.START, seed, rules);
        Thresholds most = new Thresholds(0, 0);
        for (long s = 0; s < 30 * 86_400L; s++) {
            run.step();
            most = new Thresholds(
                    StrictMath.max(most.levelMm(), rules.level), StrictMath.max(most.differenceMm(), rules.difference));
        }
        return most;
    }

    static Delays delays(SiteModel site, List<Action> actions, long seed, double onsetMin, double mostMin) {
        Thresholds limits = limits(site, seed);
        NaiveRules rules = new NaiveRules();
        SiteRun run = new SiteRun(site, actions, BalanceSink.START, seed, rules);
        double byLevel = Double.NaN;
        double byDifference = Double.NaN;
        for (long s = 0; s < (onsetMin + mostMin) * 60; s++) {
            run.step();
            double since = s / 60.0 - onsetMin;
            if (since >= 0 && Double.isNaN(byLevel) && rules.level > limits.levelMm()) {
                byLevel = since;
            }
            if (since >= 0 && Double.isNaN(byDifference) && rules.difference > limits.differenceMm()) {
                byDifference = since;
            }
        }
        return new Delays(byLevel, byDifference);
    }

    @Override
    public void level(String vessel, Instant at, double mm) {
        if (!vessel.equals("sump")) {
            return;
        }
        double least = StrictMath.min(before[0], StrictMath.min(before[1], mm));
        double most = StrictMath.max(before[0], StrictMath.max(before[1], mm));
        double median = Double.isNaN(least) ? mm : before[0] + before[1] + mm - least - most;
        before[0] = before[1];
        before[1] = mm;
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
        level = median;
        difference = count >= n ? young / YOUNG - old / OLD : Double.NEGATIVE_INFINITY;
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
