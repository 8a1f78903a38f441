package bywash.rules.text;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers in words: a point before the decimals everywhere, rounded half up, never a minus before a zero. */
public final class Figures {
    private Figures() {}

    /** @param decimals 0 or more; what is not finite is named as Java does */
    public static String of(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** With a sign, also before zero. */
    public static String signed(double value, int decimals) {
        String plain = of(value, decimals);
        return plain.startsWith("-") ? plain : "+" + plain;
    }
}
