package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class LitresKnownTest {
    private static final Instant T = Instant.parse("2026-05-04T07:30:00Z");

    private final LitresKnown known = new LitresKnown();

    @Test
    void whatCameInDoesNotGoOutByALaterFit() {
        known.take(finding(T, 280, 10));
        Litres later = known.take(finding(T, 13, 5));
        assertEquals(260, later.likelyL(), 1e-9);
        assertEquals(260, later.lowL(), 1e-9);
        assertTrue(later.highL() >= later.likelyL());
    }

    @Test
    void aSmallRevisionIsFollowed() {
        known.take(finding(T, 100, 10));
        assertEquals(92, known.take(finding(T, 92, 8)).likelyL(), 1e-9);
    }

    @Test
    void aNewOnsetStartsAnew() {
        known.take(finding(T, 280, 10));
        assertEquals(5, known.take(finding(T.plusSeconds(900), 5, 2)).likelyL(), 1e-9);
    }

    private static FlowFinding finding(Instant since, double litres, double error) {
        return new FlowFinding(
                "sump", Verdict.UNPLANNED_INFLOW, 4, 0.3, litres, error, since, "outside", null, null, "");
    }
}
