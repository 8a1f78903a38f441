package bywash.rules.vessel;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** Range checks and the numerical inverse that the shapes share. */
final class Checks {
    /** Enough halvings to bring any interval of a double down to two neighbouring values near its top. */
    private static final int HALVINGS = 200;

    private Checks() {}

    /** Refuses a size that is not a number above zero. */
    static double size(String field, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(field + " is " + value + "; it must be above 0 and finite");
        }
        return value;
    }

    /** Refuses a value outside 0 to the given top, NaN included. */
    static double within(String field, double value, double top) {
        if (!(value >= 0 && value <= top)) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "%s is %s; it must be from 0 to %s", field, value, top));
        }
        return value;
    }

    /** Finds x in [0, top] where a rising function reaches the target, by halving the interval until it cannot be halved. */
    static double inverse(DoubleUnaryOperator rising, double target, double top) {
        double low = 0;
        double high = top;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = low + (high - low) / 2;
            if (middle <= low || middle >= high) {
                break;
            }
            if (rising.applyAsDouble(middle) < target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return rising.applyAsDouble(high) <= target ? high : low + (high - low) / 2;
    }
}
