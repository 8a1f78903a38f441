package bywash.rules.husbandry.bacteria;

import bywash.rules.text.Spans;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The water as read and tested, for a checklist.
 *
 * @param probes latest believed reading of a quantity's word; null where none
 * @param tests latest manual test of a quantity's word; null where none
 * @param residualHighUgL upper bound of the estimated residual, ug/L
 */
public record PresentWater(
        Function<String, @Nullable Seen> probes, Function<String, @Nullable Seen> tests, double residualHighUgL) {

    /**
     * One value.
     *
     * @param doubt why it is not to be believed as it is; empty where it may be
     */
    public record Seen(double value, Instant at, String doubt) {
        /** Value and age in words. */
        public String words(Instant now, String unit) {
            Duration age = Duration.between(at, now);
            String old = Spans.of(age);
            return String.format(
                    Locale.ROOT,
                    "%.2f%s, %s old%s",
                    value,
                    unit.isEmpty() ? "" : " " + unit,
                    old,
                    doubt.isEmpty() ? "" : ", suspect");
        }
    }
}
