package bywash.rules.recovery;

import java.time.Instant;
import java.util.List;

/**
 * How the site comes back from an incident.
 *
 * @param incident that it comes back from
 * @param began when that began
 * @param recovered a week without elevation, tested
 * @param words where it stands, in words
 * @param tests the schedule, what is due first
 * @param feed the share of the usual feed now
 * @param feedWords why, and what must hold for the next step
 * @param bacteria in words
 */
public record RecoveryView(
        String incident,
        Instant began,
        boolean recovered,
        String words,
        List<DueTest> tests,
        FeedStage feed,
        String feedWords,
        String bacteria) {
    public RecoveryView {
        tests = List.copyOf(tests);
    }
}
