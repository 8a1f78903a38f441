package bywash.tui.command.calc;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;

/** Writes numbers: four figures, no exponent, and the US customary measure beside the metric one. */
final class Figures {
    private static final MathContext FOUR = new MathContext(4);

    private record Customary(String unit, double scale, double offset) {}

    private static final Map<String, Customary> CUSTOMARY = Map.ofEntries(
            Map.entry("L", new Customary("gal", 1 / 3.785411784, 0)),
            Map.entry("L/min", new Customary("gal/min", 1 / 3.785411784, 0)),
            Map.entry("L/d", new Customary("gal/d", 1 / 3.785411784, 0)),
            Map.entry("g", new Customary("oz", 1 / 28.349523125, 0)),
            Map.entry("g/d", new Customary("oz/d", 1 / 28.349523125, 0)),
            Map.entry("Cel", new Customary("degF", 1.8, 32)),
            Map.entry("mm", new Customary("in", 1 / 25.4, 0)),
            Map.entry("m2", new Customary("ft2", 1 / 0.09290304, 0)),
            Map.entry("hPa", new Customary("inHg", 1 / 33.86388640341, 0)));

    private Figures() {}

    /** A number to four figures. */
    static String plain(double value) {
        if (Double.isInfinite(value)) {
            return "never";
        }
        BigDecimal rounded = new BigDecimal(value).round(FOUR);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** A number with its unit, and the customary measure in brackets where there is one. */
    static String withUnit(double value, String unit) {
        String text = unit.isEmpty() || Double.isInfinite(value) ? plain(value) : plain(value) + " " + unit;
        Customary other = CUSTOMARY.get(unit);
        if (other == null || Double.isInfinite(value)) {
            return text;
        }
        return text + " (" + plain(value * other.scale() + other.offset()) + " " + other.unit() + ")";
    }
}
