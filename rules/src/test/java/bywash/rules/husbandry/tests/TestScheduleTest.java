package bywash.rules.husbandry.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.recovery.DueTest;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TestScheduleTest {
    private static final Instant NOW = Instant.parse("2026-05-04T06:00:00Z");

    private static WaterTest test(String quantity, long daysAgo, double value) {
        return new WaterTest(NOW.minus(Duration.ofDays(daysAgo)), "fish-tank", quantity, value);
    }

    private static List<TestDue> schedule(Stocking stocking, List<DueTest> recovery, WaterTest... tests) {
        Map<String, WaterTest> last = new java.util.TreeMap<>();
        for (WaterTest t : tests) {
            last.put(t.quantity(), t);
        }
        return TestSchedule.of(NOW, stocking, last::get, recovery);
    }

    private static TestDue of(String quantity, List<TestDue> schedule) {
        return schedule.stream()
                .filter(t -> t.quantity().equals(quantity))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatWasNeverTestedIsDueNow() {
        List<TestDue> all = schedule(Stocking.FISH, List.of());
        assertEquals(5, all.size());
        assertTrue(all.stream().allMatch(t -> t.due(NOW) && t.last() == null));
    }

    @Test
    void theRoutineIsWeeklyOrEveryTwoWeeks() {
        List<TestDue> all = schedule(Stocking.FISH, List.of(), test("nitrite", 6, 0.1), test("alkalinity", 20, 80));
        assertEquals(NOW.plus(Duration.ofDays(1)), of("nitrite", all).dueAt());
        assertFalse(of("nitrite", all).due(NOW));
        assertEquals(NOW.minus(Duration.ofDays(6)), of("alkalinity", all).dueAt());
        assertEquals("alkalinity", all.get(0).quantity(), "the longest overdue first");
    }

    @Test
    void anElevatedValueIsTestedDaily() {
        TestDue due = of("total-ammonia", schedule(Stocking.FISH, List.of(), test("total-ammonia", 2, 1.4)));
        assertEquals(NOW.minus(Duration.ofDays(1)), due.dueAt());
        assertEquals("daily while it is above 1 mg/L", due.why());
    }

    @Test
    void bacteriaWithoutFishAreTestedAsTheirPlanNeeds() {
        TestDue due = of("nitrite", schedule(Stocking.FISHLESS, List.of(), test("nitrite", 1, 0.1)));
        assertEquals(NOW.plus(Duration.ofDays(1)), due.dueAt());
    }

    @Test
    void afterAnIncidentTheSoonerCounts() {
        List<DueTest> recovery = List.of(
                new DueTest("total-chlorine", NOW.minusSeconds(3600), true, "until two tests in a row show none"),
                new DueTest("nitrite", NOW.plusSeconds(60), false, "daily for a week"),
                new DueTest("ph", NOW.plus(Duration.ofDays(3)), false, "at the start, after 1, 3 and 7 days"));
        List<TestDue> all = schedule(Stocking.FISH, recovery, test("nitrite", 1, 0.1), test("ph", 5, 6.9));
        assertEquals(6, all.size());
        assertEquals(
                "until two tests in a row show none, after the incident",
                of("total-chlorine", all).why());
        assertEquals(NOW.plusSeconds(60), of("nitrite", all).dueAt());
        assertEquals(NOW.plus(Duration.ofDays(2)), of("ph", all).dueAt(), "the routine asks sooner");
    }
}
