package bywash.tui.account;

import bywash.rules.chlorine.LitresKnown;
import bywash.rules.detect.FlowFinding;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Adds the findings of the balance up to runs: one of the same onset is brought up to date, another one begins a run. */
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
        if (last != null && !last.since().equals(since)) {
            done.add(last);
        }
        open.put(
                finding.vessel(),
                new FlowRun(
                        finding.vessel(),
                        since,
                        now,
                        finding.volumeL() > 0,
                        known.computeIfAbsent(finding.vessel(), v -> new LitresKnown())
                                .take(finding),
                        finding.source(),
                        finding.verdict()));
    }

    /** All runs, oldest first. */
    List<FlowRun> all() {
        List<FlowRun> all = new ArrayList<>(done);
        all.addAll(open.values());
        all.sort(Comparator.comparing(FlowRun::since).thenComparing(FlowRun::vessel));
        return all;
    }
}
