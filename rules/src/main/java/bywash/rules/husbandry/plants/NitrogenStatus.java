package bywash.rules.husbandry.plants;

import org.jspecify.annotations.Nullable;

/**
 * Nitrogen in, nitrogen taken, and what comes of it.
 *
 * @param madeGPerDay nitrate nitrogen that the feed of the last days brings, g/d
 * @param takenGPerDay what the planted beds take, g/d
 * @param nitrateMgL latest test, as NO3; NaN where none
 * @param computedPerDay change of nitrate that follows, mg/L a day as NO3
 * @param measured slope of the tests of the last weeks, mg/L a day as NO3; null with fewer than two
 * @param words the balance in words with its figures
 */
public record NitrogenStatus(
        double madeGPerDay,
        Range takenGPerDay,
        double nitrateMgL,
        Range computedPerDay,
        @Nullable Slope measured,
        Verdict verdict,
        String words) {

    /** What there is for the plants. */
    public enum Verdict {
        AMPLE("ample"),
        ENOUGH("enough"),
        SHORT("short"),
        NOT_KNOWN("not known");

        private final String word;

        Verdict(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
