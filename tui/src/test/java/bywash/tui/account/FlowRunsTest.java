package bywash.tui.account;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.chlorine.Litres;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class FlowRunsTest {
    private static final Instant SINCE = Instant.parse("2026-05-04T09:00:00Z");

    /** What the grower declared is no undeclared water, though the line ran on. */
    @Test
    void aTopUpThatRanOverIsTwoRuns() {
        FlowRuns runs = new FlowRuns();
        Instant later = SINCE.plusSeconds(3000);
        runs.take(
                new FlowFinding("sump", Verdict.PLANNED, 4, 0.2, 150, 3, SINCE, "reserve", null, null, ""),
                SINCE.plusSeconds(2300));
        runs.take(
                new FlowFinding(
                        "sump",
                        Verdict.LINE_NOT_SHUT,
                        4,
                        0.2,
                        212,
                        3,
                        160,
                        SINCE,
                        null,
                        "reserve",
                        null,
                        null,
                        null,
                        ""),
                later);
        List<FlowRun> all = runs.all();
        assertEquals(2, all.size());
        assertEquals(
                new FlowRun("sump", SINCE, later, true, Litres.of(160), "reserve", Verdict.PLANNED, 0), all.get(0));
        assertEquals(
                new FlowRun("sump", SINCE, later, true, new Litres(46, 52, 58), "reserve", Verdict.LINE_NOT_SHUT, 0),
                all.get(1));
    }
}
