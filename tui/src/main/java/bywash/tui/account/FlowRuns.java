package bywash.tui.account;

import bywash.rules.chlorine.Litres;
import bywash.rules.detect.FlowFinding;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Adds the findings of the balance up to runs: one with the onset of the last brings it up to date, any other begins another.
 * Litres are those that the alarm and the response sheet tell.
 */
final class FlowRuns {
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
        if (last != null && !last.since().equals(since)) {
            done.add(last);
        }
        open.put(
                finding.vessel(),
                new FlowRun(
                        finding.vessel(),
                        since,
                        finding.until() == null ? now : finding.until(),
                        finding.volumeL() > 0,
                        Litres.of(finding.moved()),
                        finding.source(),
                        finding.verdict(),
                        Math.abs(finding.declaredL())));
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
