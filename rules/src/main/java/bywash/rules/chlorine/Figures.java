package bywash.rules.chlorine;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers in the lines of evidence, which are written anew with every judgement: rounded half up, never {@code -0}. */
final class Figures {
    private Figures() {}

    static String of(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** With a sign, also before zero. */
    static String signed(double value, int decimals) {
        String plain = of(value, decimals);
        return plain.startsWith("-") ? plain : "+" + plain;
    }
}
