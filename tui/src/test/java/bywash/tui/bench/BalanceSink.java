package bywash.tui.bench;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.WaterBalance;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.SiteModel;
import bywash.samples.simulation.SiteRun;
import bywash.samples.simulation.SiteSink;
import bywash.samples.simulation.Truth;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Drives the water balance with what a simulated site tells and notes each cry, as the alarms would. */
final class BalanceSink implements SiteSink {
    static final Instant START = Instant.parse("2026-05-04T00:00:00Z");
    private static final Set<Verdict> CRIES =
            EnumSet.of(Verdict.UNPLANNED_INFLOW, Verdict.UNPLANNED_LOSS, Verdict.LINE_NOT_SHUT);

    /** A cry that began. */
    record Cry(double atMin, FlowFinding finding) {
        @Override
        public String toString() {
            return "day %.3f %s %s %+.2f L/min since %s: %s"
                    .formatted(
                            atMin / 1440,
                            finding.vessel(),
                            finding.verdict(),
                            finding.rateLMin(),
                            finding.since(),
                            finding.why());
        }
    }

    final List<Cry> cries = new ArrayList<>();
    final Map<String, Double> learnedMin = new TreeMap<>();
    private final WaterBalance balance;
    private final Site site;
    private final SiteRun run;
    private final Map<String, Verdict> last = new TreeMap<>();
    private long second;

    BalanceSink(SiteModel model, List<Action> actions, long seed) {
        this.site = BenchSite.of(model);
        this.balance = new WaterBalance(site);
        this.run = new SiteRun(model, actions, START, seed, this);
    }

    /** Runs to the minute, or to the first cry at or after {@code stopAfterMin}. */
    BalanceSink to(double minutes, double stopAfterMin) {
        while (second < minutes * 60) {
            run.step();
            if (second % 5 == 0) {
                tick(second / 60.0);
                if (!cries.isEmpty() && cries.get(cries.size() - 1).atMin() >= stopAfterMin) {
                    return this;
                }
            }
            second++;
        }
        return this;
    }

    /** What the balance says of a vessel now; null before it says anything. */
    @Nullable
    FlowFinding finding(String vessel) {
        return balance.finding(vessel);
    }

    /** What is really so. */
    Truth truth() {
        return run.truth();
    }

    private void tick(double tMin) {
        balance.tick(START.plusSeconds(second));
        for (Vessel vessel : site.vessels()) {
            FlowFinding finding = balance.finding(vessel.id());
            if (finding == null) {
                continue;
            }
            Verdict before = last.put(vessel.id(), finding.verdict());
            if (finding.verdict() != before && CRIES.contains(finding.verdict())) {
                cries.add(new Cry(tMin, finding));
            }
            if (finding.verdict() == Verdict.QUIET) {
                learnedMin.putIfAbsent(vessel.id(), tMin);
            }
        }
    }

    @Override
    public void level(String vessel, Instant at, double mm) {
        double height = vessel.equals("sump") ? 750 : 1200;
        if (mm <= height * 1.05) {
            balance.level(vessel, at, StrictMath.min(mm, height));
        }
    }

    @Override
    public void pump(Instant at, boolean on) {
        balance.pump(at, on);
    }

    @Override
    public void entry(OperatorEntry entry) {
        if (entry instanceof OperatorEntry.TopUpStart start) {
            balance.topUpStarted(start);
        } else if (entry instanceof OperatorEntry.TopUpEnd end) {
            balance.topUpEnded(end);
        } else if (entry instanceof OperatorEntry.BatchFill fill) {
            balance.batchFilled(fill);
        }
    }

    @Override
    public void quality(Instant at, WaterSample sample) {
        // the balance is about levels
    }
}
