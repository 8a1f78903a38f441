package bywash.tui.account;

import bywash.rules.chlorine.Litres;
import bywash.rules.chlorine.LitresKnown;
import bywash.rules.detect.FlowFinding;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Adds the findings of the balance up to runs: one whose onset lies in the last run brings it up to date, one that begins
 * after the last was over begins another.
 */
final class FlowRuns {
    private final Map<String, LitresKnown> known = new TreeMap<>();
    private final Map<String, FlowRun> open = new TreeMap<>();
    private final List<FlowRun> done = new ArrayList<>();

    /** Whether the finding says that water moves. */
    static boolean moves(FlowFinding finding) {
        return switch (finding.verdict()) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT, UNPLANNED_LOSS, PLANNED -> finding.since() != null;
            case LEARNING, QUIET, DRAIN_DOWN -> false;
        };
    }

    void take(FlowFinding finding, Instant now) {
        Instant since = finding.since();
        if (!moves(finding) || since == null || finding.volumeL() == 0) {
            return;
        }
        FlowRun last = open.get(finding.vessel());
        double high = Math.abs(finding.volumeL()) + 2 * Math.max(0, finding.volumeSeL());
        if (last != null && last.until().isBefore(since)) {
            done.add(last);
        } else if (last != null) {
            high = Math.max(high, last.litres().highL());
        }
        open.put(
                finding.vessel(),
                new FlowRun(
                        finding.vessel(),
                        since,
                        now,
                        finding.volumeL() > 0,
                        litres(finding, high),
                        finding.source(),
                        finding.verdict(),
                        Math.abs(finding.declaredL())));
    }

    /** The range holds all that was thought likely while it ran: the last fit of a flow that has ended is none better. */
    private Litres litres(FlowFinding finding, double high) {
        Litres now =
                known.computeIfAbsent(finding.vessel(), v -> new LitresKnown()).take(finding);
        return new Litres(now.lowL(), now.likelyL(), Math.max(now.highL(), high));
    }

    /** All runs, oldest first; what ran over of a release as one of its own. */
    List<FlowRun> all() {
        List<FlowRun> all = new ArrayList<>();
        Stream.concat(done.stream(), open.values().stream())
                .flatMap(FlowRun::parts)
                .forEach(all::add);
        all.sort(Comparator.comparing(FlowRun::since).thenComparing(FlowRun::vessel));
        return all;
    }
}
