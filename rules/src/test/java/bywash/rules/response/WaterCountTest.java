package bywash.rules.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class WaterCountTest {
    private static final Instant SINCE = Instant.parse("2026-05-04T09:00:00Z");

    private final WaterCount count = new WaterCount();

    private void topUp(Verdict verdict, double litres, double declared) {
        count.take(new FlowFinding(
                "sump", verdict, 4, 0.2, litres, 3, declared, SINCE, null, "reserve", null, null, null, ""));
    }

    @Test
    void ofATopUpThatRanOverOnlyWhatWasNotDeclaredIsUnplanned() {
        topUp(Verdict.PLANNED, 170, 0);
        assertEquals(0, count.unplannedL());
        topUp(Verdict.LINE_NOT_SHUT, 212, 160);
        assertEquals(52, count.unplannedL());
        assertEquals(
                List.of("sump: 212 L (206 to 218 L) in since 2026-05-04 09:00, 160 L of them declared, from reserve"),
                count.words(ZoneId.of("UTC")));
    }

    @Test
    void afterARestartItStillIs() {
        topUp(Verdict.LINE_NOT_SHUT, 212, 160);
        WaterCount again = new WaterCount();
        again.restore(count.runs(), SINCE.plusSeconds(3600));
        assertEquals(52, again.unplannedL());
    }
}
