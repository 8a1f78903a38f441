package bywash.rules.husbandry.probes;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One probe's care as it stands.
 *
 * @param calibrations that could be worked out, oldest first
 * @param drift between the last two; null where not known
 * @param differences from manual tests since the last calibration, oldest first
 * @param dueAt when it is to be calibrated; null where no calibration is on record
 * @param care what was last done to it, in words; empty where nothing
 * @param suspect why its readings are not to be believed as they are; empty where they may be
 * @param words how it stands, in words with figures
 */
public record ProbeCareStatus(
        String probe,
        String quantity,
        State state,
        List<CalibrationResult> calibrations,
        @Nullable Drift drift,
        List<TestDifference> differences,
        @Nullable Instant dueAt,
        String care,
        @Nullable Instant careAt,
        String suspect,
        String words) {
    public ProbeCareStatus {
        calibrations = List.copyOf(calibrations);
        differences = List.copyOf(differences);
    }

    /** Most urgent last. */
    public enum State {
        GOOD("good"),
        NOT_ON_RECORD("not on record"),
        DUE_SOON("due soon"),
        OVERDUE("overdue"),
        DISAGREES("disagrees with tests"),
        FAULTY("out of slope");

        private final String word;

        State(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public @Nullable CalibrationResult latest() {
        return calibrations.isEmpty() ? null : calibrations.get(calibrations.size() - 1);
    }
}
