package bywash.rules.water;

import java.util.Locale;
import java.util.regex.Pattern;

/** Refuses values outside the range a formula was made for. */
public final class Valid {
    /** What a field's name ends in, which the message gives as its unit. */
    private static final Pattern UNIT = Pattern.compile(
            "(?<=[a-z])(GPerDay|MgL|UgL|MmolL|LMin|GKg|Hpa|Atm|Percent|PerHour|PerDay|Mv|Kg|Ppm|C|L|G|H|M|Mm)$");

    private static final Pattern HUMP = Pattern.compile("(?<=[a-z])(?=[A-Z])");

    private Valid() {}

    /** Returns the value, or throws naming the field, the value and the valid range; NaN is outside every range. */
    public static double within(String field, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(words(field) + " is " + plain(value) + unit(unit) + "; it must be from "
                    + plain(low) + " to " + plain(high) + unit(unit));
        }
        return value;
    }

    /** Returns the value if it is above zero and not above the top. */
    public static double positive(String field, double value, double high, String unit) {
        if (!(value > 0 && value <= high)) {
            throw new IllegalArgumentException(words(field) + " is " + plain(value) + unit(unit)
                    + "; it must be above 0 and at most " + plain(high) + unit(unit));
        }
        return value;
    }

    /** {@code targetPh} is target pH, {@code temperatureC} temperature. */
    private static String words(String field) {
        String[] parts = HUMP.split(UNIT.matcher(field).replaceFirst(""));
        StringBuilder words = new StringBuilder();
        for (String part : parts) {
            String word = part.equalsIgnoreCase("ph") ? "pH" : part.toLowerCase(Locale.ROOT);
            words.append(words.length() == 0 ? "" : " ").append(part.indexOf(' ') >= 0 ? part : word);
        }
        return words.toString();
    }

    private static String unit(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static String plain(double value) {
        boolean whole = value == Math.rint(value) && Math.abs(value) < 1e15;
        return whole ? Long.toString((long) value) : Double.toString(value);
    }
}
