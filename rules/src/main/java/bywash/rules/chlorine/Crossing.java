package bywash.rules.chlorine;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * When the residual passes a criterion, upward while water runs in, downward while it does not.
 *
 * @param limitUgL the criterion, ug/L
 * @param rising whether it will be passed upward
 * @param earliest by the end of the range that passes first; null where it does not pass
 * @param likely by the likely value; null where it does not pass
 * @param latest by the other end; null where it does not pass
 */
public record Crossing(
        double limitUgL,
        boolean rising,
        @Nullable Instant earliest,
        @Nullable Instant likely,
        @Nullable Instant latest) {

    /** Not to be passed from where it stands. */
    public static Crossing none(double limitUgL) {
        return new Crossing(limitUgL, false, null, null, null);
    }

    /** Whether any end of the range passes it. */
    public boolean expected() {
        return earliest != null;
    }
}
