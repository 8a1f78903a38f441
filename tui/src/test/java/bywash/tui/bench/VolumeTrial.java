package bywash.tui.bench;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.SiteModel;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** One inflow of known litres and what the balance said of them while it ran and once it was over. */
final class VolumeTrial {
    static final double WARM_MIN = 720;
    private static final double AFTER_MIN = 120;
    private static final double LOOK_MIN = 1.0 / 12;
    private static final double FOUND_WITHIN_MIN = 60;

    /** Water at one rate for so long. */
    record Part(double rateLMin, double minutes) {}

    final List<Part> parts;
    final double onsetMin;
    final double endMin;
    private final BalanceSink sink;
    private @Nullable FlowFinding last;
    private double foundMin = Double.NaN;
    private double overMin = Double.NaN;
    private int looks;
    private int inside;
    private boolean brokeOff;

    /** Draws an inflow of 2 to 12 L/min for 20 to 60 min, shortened to so many litres. */
    static VolumeTrial drawn(SiteModel site, long seed, double mostL) {
        SplittableRandom random = new SplittableRandom(seed);
        double rate = 2 + 10 * random.nextDouble();
        double minutes = StrictMath.max(20, StrictMath.min(mostL / rate, 20 + 40 * random.nextDouble()));
        return new VolumeTrial(site, seed, new Part(StrictMath.min(rate, mostL / minutes), minutes));
    }

    /** Inflows one after the other without a break: a valve that somebody turns. */
    VolumeTrial(SiteModel site, long seed, Part... parts) {
        this(site, WARM_MIN, seed, parts);
    }

    /** @param warmMin how long the site has been watched when the first begins, or up to 97 min longer */
    VolumeTrial(SiteModel site, double warmMin, long seed, Part... parts) {
        this.parts = List.of(parts);
        this.onsetMin = warmMin + seed * 37 % 97 + 0.4;
        List<Action> actions = new ArrayList<>();
        double at = onsetMin;
        for (Part part : parts) {
            actions.add(new Action.InflowIntoSump(at, at + part.minutes(), part.rateLMin(), 0.9));
            at += part.minutes();
        }
        this.endMin = at;
        this.sink = new BalanceSink(site, actions, seed);
        run();
    }

    /** What has come in by then. */
    private double truthL(double tMin) {
        double litres = 0;
        double left = tMin - onsetMin;
        for (Part part : parts) {
            litres += part.rateLMin() * StrictMath.max(0, StrictMath.min(part.minutes(), left));
            left -= part.minutes();
        }
        return litres;
    }

    private void run() {
        sink.to(onsetMin, 1e18);
        for (double t = onsetMin; t < endMin + AFTER_MIN && Double.isNaN(overMin); t += LOOK_MIN) {
            sink.to(t, 1e18);
            look(t);
        }
    }

    private void look(double t) {
        FlowFinding f = sink.finding("sump");
        if (f != null && f.verdict() == Verdict.UNPLANNED_INFLOW) {
            foundMin = Double.isNaN(foundMin) ? t : foundMin;
            last = f;
            if (t < endMin) {
                looks++;
                inside += holds(f, truthL(t)) ? 1 : 0;
            }
        } else if (last != null && t >= endMin) {
            overMin = t;
        } else if (last != null) {
            brokeOff = true;
        }
    }

    private static boolean holds(FlowFinding f, double litres) {
        return StrictMath.abs(f.volumeL() - litres) <= 2 * f.volumeSeL();
    }

    double truthL() {
        return truthL(endMin);
    }

    boolean missed() {
        return last == null || foundMin - onsetMin > FOUND_WITHIN_MIN;
    }

    /** Whether the balance took it for over while it still ran. */
    boolean brokeOff() {
        return brokeOff;
    }

    /** Minutes that it was said to run on after its end. */
    double runsOnMin() {
        return (Double.isNaN(overMin) ? endMin + AFTER_MIN : overMin) - endMin;
    }

    /** What was said at the last; null where it was missed. */
    @Nullable
    FlowFinding said() {
        return last;
    }

    boolean rangeHolds() {
        return last != null && holds(last, truthL());
    }

    /** Share of the looks while it ran whose range held what had come in by then; NaN without any. */
    double heldWhileRunning() {
        return looks == 0 ? Double.NaN : inside / (double) looks;
    }

    @Override
    public String toString() {
        FlowFinding f = last;
        StringBuilder what = new StringBuilder();
        for (Part part : parts) {
            what.append(what.isEmpty() ? "" : ", then ")
                    .append("%.1f L/min for %.0f min".formatted(part.rateLMin(), part.minutes()));
        }
        return "%s: %.0f L; said %s; found after %.1f, began %+.1f min; ran on %.1f min, held %.2f%s"
                .formatted(
                        what,
                        truthL(),
                        f == null ? "nothing" : "%.0f +/- %.0f L".formatted(f.volumeL(), 2 * f.volumeSeL()),
                        foundMin - onsetMin,
                        f == null || f.since() == null
                                ? Double.NaN
                                : Duration.between(BalanceSink.START, f.since()).toSeconds() / 60.0 - onsetMin,
                        runsOnMin(),
                        heldWhileRunning(),
                        brokeOff ? ", broke off" : "");
    }
}
