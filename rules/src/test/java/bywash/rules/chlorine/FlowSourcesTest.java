package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.chlorine.FlowSources.Brought;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Part;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A flow out of a reserve that was tested clean, then on without it. */
class FlowSourcesTest {
    private static final Mains MAINS = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
    private static final Instant SINCE = Instant.parse("2026-05-04T06:00:00Z");
    private static final Part LOST = new Part("reserve", 100, 3, at(25));

    private final ReserveBatch batch = new ReserveBatch("reserve", MAINS, 900);
    private final FlowSources sources = new FlowSources(MAINS, Map.of("reserve", batch));

    private static Instant at(int minutes) {
        return SINCE.plusSeconds(minutes * 60L);
    }

    private Brought at(int minutes, double litres, String source, @Nullable Part part, @Nullable Instant until) {
        FlowFinding finding = new FlowFinding(
                "sump", Verdict.UNPLANNED_INFLOW, 4, 0.1, litres, 5, 0, SINCE, until, source, part, null, null, "");
        return sources.brought(at(minutes), "sump", SINCE, finding);
    }

    private void testedClean() {
        batch.level(at(-60), 800);
        batch.tested(at(-30), 0);
    }

    @Test
    void onlyWhatTheReserveDidNotLoseCountsAsMainsWater() {
        testedClean();
        assertNull(at(20, 80, "reserve", null, null).ofReserve());
        Brought on = at(40, 160, "unknown", LOST, null);
        Inflow lent = on.ofReserve();
        assertNotNull(lent);
        assertEquals(new Litres(94, 100, 106), lent.litres());
        assertEquals(at(25), lent.until());
        assertEquals(0, lent.rateLMin());
        assertTrue(lent.source().highMgL() < 0.1, "of the batch " + lent.source());
        assertEquals(new Litres(44, 60, 76), on.inflow().litres());
        assertEquals(0.9, on.inflow().ifMains().likelyMgL(), 1e-9);
        assertEquals(4, on.inflow().rateLMin());
    }

    @Test
    void itsLastFiguresAreSharedInTheSameWay() {
        testedClean();
        at(20, 80, "reserve", null, null);
        at(40, 160, "unknown", LOST, null);
        Brought last = at(45, 168, "outside", null, at(42));
        assertNotNull(last.ofReserve());
        assertEquals(68, last.inflow().litres().likelyL());
    }

    /** Its level fell, but nothing showed that it was this flow: it may have leaked elsewhere. */
    @Test
    void aReserveThatWasNeverNamedHasNoPartInIt() {
        testedClean();
        Brought brought = at(40, 160, "unknown", LOST, null);
        assertNull(brought.ofReserve());
        assertEquals(160, brought.inflow().litres().likelyL());
    }

    @Test
    void noMoreThanAllOfItCameFromThere() {
        testedClean();
        at(20, 80, "reserve", null, null);
        Brought on = at(30, 90, "unknown", LOST, null);
        Inflow lent = on.ofReserve();
        assertNotNull(lent);
        assertEquals(new Litres(90, 90, 100), lent.litres());
        assertEquals(new Litres(0, 0, 10), on.inflow().litres());
    }
}
