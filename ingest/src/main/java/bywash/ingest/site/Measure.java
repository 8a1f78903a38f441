package bywash.ingest.site;

import bywash.ingest.text.PlainText;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with its unit as people write it: "0.74 m", "12.5 Cel", "40 min". The blank between them may be left out.
 *
 * @param number as written
 * @param unit symbol as written; empty where none stands
 */
public record Measure(BigDecimal number, String unit) {
    private static final Pattern FORM =
            Pattern.compile("([+-]?(?:\\d{1,20}(?:\\.\\d{0,20})?|\\.\\d{1,20})(?:[eE][+-]?\\d{1,2})?)\\s*(\\S{0,12})");

    /** A text that is no measure of what was asked for; the message says what is wrong, {@link #right()} what would do. */
    public static final class NotAMeasure extends Exception {
        private static final long serialVersionUID = 1L;
        private final String right;

        public NotAMeasure(String what, String right) {
            super(what, null, false, false);
            this.right = right;
        }

        public String what() {
            return String.valueOf(getMessage());
        }

        public String right() {
            return right;
        }
    }

    /**
     * Takes the text apart.
     *
     * @throws NotAMeasure where it is not a number followed by at most one unit
     */
    public static Measure parse(String text) throws NotAMeasure {
        Matcher m = text.length() > 80 ? null : FORM.matcher(text.strip());
        if (m == null || !m.matches()) {
            throw new NotAMeasure("\"" + shortened(text) + "\" is not a number with a unit", "such as \"0.74 m\"");
        }
        return new Measure(new BigDecimal(m.group(1)), m.group(2));
    }

    /** Parses, and converts to the dimension's fixed unit. */
    public static double parse(String text, Dimension dimension) throws NotAMeasure {
        return checked(text, dimension).in(dimension);
    }

    /** Parses a time to the nanosecond. */
    public static Duration parseDuration(String text) throws NotAMeasure {
        Measure m = checked(text, Dimension.DURATION);
        Dimension.Conversion c = Dimension.DURATION.conversion(m.unit);
        if (c == null || m.number.abs().compareTo(new BigDecimal("1e10")) > 0) {
            throw new NotAMeasure("\"" + shortened(text) + "\" is too long a time", "at most 1e10 s");
        }
        BigDecimal nanos = m.number.multiply(c.exactScale()).movePointRight(9).setScale(0, RoundingMode.HALF_UP);
        BigDecimal[] parts = nanos.divideAndRemainder(BigDecimal.valueOf(1_000_000_000L));
        return Duration.ofSeconds(parts[0].longValue(), parts[1].longValue());
    }

    private static Measure checked(String text, Dimension dimension) throws NotAMeasure {
        String right = dimension.phrase() + " in " + dimension.allowed();
        Measure m;
        try {
            m = parse(text);
        } catch (NotAMeasure e) {
            throw new NotAMeasure(e.what(), right);
        }
        if (dimension.allows(m.unit)) {
            return m;
        }
        if (m.unit.isEmpty()) {
            if (dimension == Dimension.PH) {
                return new Measure(m.number, "pH");
            }
            throw new NotAMeasure("\"" + shortened(text) + "\" has no unit", right);
        }
        Dimension other = Dimension.of(m.unit);
        String what = other == null
                ? "unit \"" + shortened(m.unit) + "\" is not known"
                : "\"" + shortened(text) + "\" is " + other.phrase() + ", not " + dimension.phrase();
        throw new NotAMeasure(what, right);
    }

    /** Returns the value in the dimension's fixed unit. */
    public double in(Dimension dimension) {
        return dimension.toFixed(number.doubleValue(), unit);
    }

    /** The shortest text that reads back as the same double: "160 L", "0.35 mg/L". */
    public static String format(double value, String unit) {
        String shortest = Double.toString(value);
        String number = shortest.contains("E")
                ? new BigDecimal(shortest).stripTrailingZeros().toPlainString()
                : shortest;
        if (number.endsWith(".0")) {
            number = number.substring(0, number.length() - 2);
        }
        return unit.isEmpty() ? number : number + " " + unit;
    }

    /** Minutes where they are whole, else seconds: "40 min", "90 s", "0.5 s". */
    public static String format(Duration duration) {
        long seconds = duration.getSeconds();
        if (duration.getNano() == 0) {
            return seconds % 60 == 0 ? seconds / 60 + " min" : seconds + " s";
        }
        BigDecimal exact = BigDecimal.valueOf(seconds).add(BigDecimal.valueOf(duration.getNano(), 9));
        return exact.stripTrailingZeros().toPlainString() + " s";
    }

    static String shortened(String text) {
        return PlainText.of(text, 60);
    }
}
