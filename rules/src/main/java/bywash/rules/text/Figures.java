package bywash.rules.text;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers in words: a point before the decimals everywhere, rounded half up, never a minus before a zero. */
public final class Figures {
    private static final int[] POWERS = {1, 10, 100, 1000};
    /** Below this a figure times a thousand is out by far less than {@link #NEAR_HALF}. */
    private static final double PLAIN = 1e6;

    private static final double NEAR_HALF = 1e-6;

    private Figures() {}

    /** @param decimals 0 or more; what is not finite is named as Java does */
    public static String of(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        return decimals < POWERS.length && Math.abs(value) < PLAIN ? plain(value, decimals) : exact(value, decimals);
    }

    /** Most figures by whole numbers, which takes a tenth of the time; near a half the decimals written out decide. */
    private static String plain(double value, int decimals) {
        double scaled = Math.abs(value) * POWERS[decimals];
        long whole = (long) scaled;
        double rest = scaled - whole;
        if (Math.abs(rest - 0.5) < NEAR_HALF) {
            return exact(value, decimals);
        }
        long rounded = rest > 0.5 ? whole + 1 : whole;
        String digits = Long.toString(rounded);
        StringBuilder text = new StringBuilder(digits.length() + decimals + 2);
        if (value < 0 && rounded > 0) {
            text.append('-');
        }
        text.append("0".repeat(Math.max(0, decimals + 1 - digits.length()))).append(digits);
        if (decimals > 0) {
            text.insert(text.length() - decimals, '.');
        }
        return text.toString();
    }

    private static String exact(double value, int decimals) {
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
