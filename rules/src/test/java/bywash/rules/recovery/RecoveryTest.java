package bywash.rules.recovery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class RecoveryTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    private final WaterTests tests = new WaterTests();
    private final RecentMeals feed = new RecentMeals();
    private final Recovery recovery = new Recovery(tests, feed);

    @Test
    void thereIsNoneWithoutAnIncident() {
        assertNull(recovery.view(T, 2000));
    }

    @Test
    void asksForAllTestsAtOnceAndForAmmoniaDaily() {
        recovery.begin("i", T);
        List<String> due = due(1);
        assertTrue(
                due.containsAll(List.of("total-chlorine", "total-ammonia", "nitrite", "ph", "alkalinity")), "" + due);
        all(2, 0.2, 0.1);
        assertFalse(due(3).contains("total-ammonia"));
        assertTrue(due(27).contains("total-ammonia"));
        assertTrue(due(27).contains("ph"), "after a day");
    }

    @Test
    void chlorineIsAskedForUntilTwoZerosInARow() {
        recovery.begin("i", T);
        tests.add("total-chlorine", at(1), 0);
        tests.add("total-chlorine", at(2), 0.05);
        tests.add("total-chlorine", at(3), 0);
        assertTrue(scheduled(4).contains("total-chlorine"));
        tests.add("total-chlorine", at(14), 0.01);
        assertFalse(scheduled(15).contains("total-chlorine"));
    }

    @Test
    void feedIsHeldThenSteppedBackADayAtATimeWhileTestsAreGood() {
        recovery.begin("i", T);
        tests.add("total-chlorine", at(1), 0);
        tests.add("total-chlorine", at(13), 0);
        FeedStage[] after = {FeedStage.HOLD, FeedStage.QUARTER, FeedStage.HALF, FeedStage.THREE_QUARTERS, FeedStage.FULL
        };
        for (int day = 0; day < after.length; day++) {
            all(24 * day + 1, 0.3, 0.1);
            recovery.tick(at(24 * day + 2), false);
            assertEquals(after[day], view(24 * day + 2).feed(), "day " + day);
        }
    }

    @Test
    void feedWaitsWithoutTestsAndGoesBackToNoneWhenOneIsElevated() {
        recovery.begin("i", T);
        tests.add("total-chlorine", at(1), 0);
        tests.add("total-chlorine", at(13), 0);
        recovery.tick(at(60), false);
        assertEquals(FeedStage.HOLD, view(60).feed());
        assertTrue(view(60).feedWords().contains("total ammonia"));
        all(60, 0.3, 0.1);
        recovery.tick(at(61), false);
        assertEquals(FeedStage.QUARTER, view(61).feed());
        all(84, 1.6, 0.1);
        recovery.tick(at(85), false);
        assertEquals(FeedStage.HOLD, view(85).feed());
    }

    @Test
    void saysRecoveredAfterATestedWeekWithoutElevationAndNotBefore() {
        recovery.begin("i", T);
        tests.add("total-chlorine", at(1), 0);
        tests.add("total-chlorine", at(13), 0);
        for (int day = 0; day <= 7; day++) {
            all(24 * day + 1, day == 2 ? 1.8 : 0.3, 0.1);
        }
        assertFalse(view(24 * 7 + 2).recovered(), "elevated on day two");
        for (int day = 8; day <= 9; day++) {
            all(24 * day + 1, 0.3, 0.1);
        }
        assertTrue(view(24 * 9 + 2).recovered());
        assertTrue(view(24 * 9 + 2).words().startsWith("Recovered"));
    }

    @Test
    void aWeekWithoutTestsIsNotKnownToBeRecovered() {
        recovery.begin("i", T);
        RecoveryView view = view(24 * 8);
        assertFalse(view.recovered());
        assertTrue(view.words().contains("not known"));
    }

    @Test
    @DisplayName("100 g/d of 38 % feed: 0.092 x 38 g = 3.5 g N/d (Timmons and Ebeling's factor), 1.75 mg/L/d in 2000 L")
    void expectsTheAmmoniaOfTheFeed() {
        tests.add("total-ammonia", at(0), 0.4);
        feed.add(at(2), 100, 0.38);
        tests.add("total-ammonia", at(24), 0.4);
        Bacteria even = Bacteria.judge(at(25), tests, feed, 2000);
        assertEquals(1.748, even.expectedMgLDay(), 1e-3);
        assertFalse(even.setback());
        assertTrue(even.words().contains("100 %"), even.words());
        feed.add(at(26), 100, 0.38);
        tests.add("total-ammonia", at(48), 1.3);
        Bacteria back = Bacteria.judge(at(49), tests, feed, 2000);
        assertTrue(back.setback());
        assertTrue(back.words().contains("49 %"), back.words());
    }

    @Test
    void theFeedOfSeveralDaysCountsByTheDay() {
        feed.add(at(2), 100, 0.38);
        feed.add(at(26), 100, 0.38);
        assertEquals(1.748, feed.expectedMgLDay(at(0), at(48), 2000), 1e-3);
        assertEquals(2 * 1.748, feed.expectedMgLDay(at(0), at(48), 1000), 2e-3, "in half the water");
        assertEquals(0, feed.expectedMgLDay(at(3), at(25), 2000), 0, "between the meals");
        assertEquals(
                4 * 1.748, feed.expectedMgLDay(at(2), at(3), 2000), 1e-2, "one hour is no day: a quarter at least");
    }

    @Test
    @DisplayName("feed whose protein nobody gave counts with 35 %: 0.092 x 35 g in 2000 L")
    void feedWithoutItsProteinIsUsualFeed() {
        feed.add(at(2), 100, Double.NaN);
        assertEquals(1.61, feed.expectedMgLDay(at(0), at(24), 2000), 1e-3);
        feed.add(at(30), 100, 0.9);
        assertEquals(2 * 1.61, feed.expectedMgLDay(at(30), at(54), 2000), 2e-3, "no feed has more than 70 %");
    }

    @Test
    void feedOfMoreThanAWeekAgoIsForgotten() {
        feed.add(at(0), 100, 0.38);
        feed.add(at(24 * 7), 100, 0.38);
        assertTrue(feed.any(at(0), at(1)), "a week to the hour");
        feed.add(at(24 * 7 + 1), 100, 0.38);
        assertFalse(feed.any(at(0), at(1)));
    }

    @Test
    void isOverThirtyDaysAfterItBegan() {
        recovery.begin("i", T);
        assertNotNull(recovery.view(at(24 * 30), 2000));
        assertNull(recovery.view(at(24 * 30 + 1), 2000));
    }

    @Test
    void asksForPhAfterOneThreeAndSevenDaysAndThenEachWeek() {
        recovery.begin("i", T);
        for (int day : new int[] {0, 1, 3, 7}) {
            assertTrue(due(24 * day).contains("ph"), "day " + day);
            tests.add("ph", at(24 * day), 6.8);
            assertFalse(due(24 * day).contains("ph"), "day " + day);
        }
        assertFalse(due(24 * 14 - 1).contains("ph"));
        assertTrue(due(24 * 14).contains("ph"));
    }

    @Test
    void twiceTheUsualIsElevatedOnceItIsHalfOfWhatAlwaysIs() {
        for (int day = 0; day < 3; day++) {
            tests.add("nitrite", at(24 * day), 0.1);
        }
        assertFalse(Bacteria.elevated(tests, "nitrite", new WaterTests.Test(at(96), 0.49)));
        assertTrue(Bacteria.elevated(tests, "nitrite", new WaterTests.Test(at(96), 0.5)));
        assertFalse(Bacteria.elevated(tests, "total-ammonia", new WaterTests.Test(at(96), 1.0)), "nothing is usual");
        assertTrue(Bacteria.elevated(tests, "total-ammonia", new WaterTests.Test(at(96), 1.01)));
    }

    @Test
    void saysWhichOfTheTwoClimbs() {
        tests.add("total-ammonia", at(0), 0.4);
        tests.add("nitrite", at(0), 0.1);
        tests.add("total-ammonia", at(24), 1.4);
        assertTrue(judged(25).startsWith("Ammonia climbs. "), judged(25));
        assertTrue(judged(25).endsWith("no feed is on record to hold it against."), judged(25));
        tests.add("nitrite", at(25), 1.3);
        assertTrue(judged(26).startsWith("Ammonia and nitrite climb. "), judged(26));
    }

    private String judged(int hour) {
        return Bacteria.judge(at(hour), tests, feed, 2000).words();
    }

    @Test
    void aClimbThatAKitCouldErrIsNoSetback() {
        tests.add("total-ammonia", at(0), 0.95);
        tests.add("total-ammonia", at(24), 1.1);
        assertFalse(Bacteria.judge(at(25), tests, feed, 2000).setback());
    }

    private void all(int hour, double ammonia, double nitrite) {
        tests.add("total-ammonia", at(hour), ammonia);
        tests.add("nitrite", at(hour), nitrite);
        tests.add("ph", at(hour), 6.8);
        tests.add("alkalinity", at(hour), 60);
    }

    private List<String> due(int hour) {
        return view(hour).tests().stream()
                .filter(DueTest::due)
                .map(DueTest::quantity)
                .toList();
    }

    private List<String> scheduled(int hour) {
        return view(hour).tests().stream().map(DueTest::quantity).toList();
    }

    private RecoveryView view(int hour) {
        RecoveryView view = recovery.view(at(hour), 2000);
        assertNotNull(view);
        return view;
    }

    private static Instant at(int hour) {
        return T.plusSeconds(3600L * hour);
    }
}
