package bywash.tui.view;

import bywash.rules.site.Units;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Words of the rules, which are metric, in US units where the site chose them: fish, feed and crops in ounces and pounds, areas in square
 * feet, volumes in gallons, temperatures in Fahrenheit, loads of a tank in pounds a gallon. What a kit or a small scale is read in
 * stays: mg/L, ug/L, and grams of chemicals, of nitrogen, oxygen and alkalinity.
 */
public final class UsWords {
    private static final String NUMBER = "([+-]?\\d+(?:\\.\\d+)?)";
    private static final String RANGE = "(?<![\\w.-])" + NUMBER + "(?: (to|and|instead of|\\+/-) " + NUMBER + ")? ";
    private static final String CHEMICAL =
            "(?! (?:sodium|ascorbic)| of (?:N\\b|it\\b|nitrogen|ammoni|oxygen|alkalinity|potassium|calcium|phos|nitric|hydro|sul|citric|sodium|asc|thio)"
                    + "| a day as CaCO3|, pH | in all)";

    private static final Pattern AMOUNT = Pattern.compile(RANGE + "g\\b" + CHEMICAL);
    /** Such as {@code 82 g a fish (75 to 90)}. */
    private static final Pattern EACH =
            Pattern.compile(NUMBER + " g( each| a fish) \\(" + NUMBER + " to " + NUMBER + "\\)");

    private static final Pattern FLOW = Pattern.compile(RANGE + "L/min\\b");
    private static final Pattern BULK = Pattern.compile(RANGE + "kg(?!/)\\b");
    private static final Pattern LOAD = Pattern.compile(RANGE + "kg/m3");
    private static final Pattern GUIDE = Pattern.compile("guide (\\d+(?:\\.\\d+)?)(?=:)");
    private static final Pattern AREA = Pattern.compile(RANGE + "m2\\b");
    private static final Pattern VOLUME = Pattern.compile(RANGE + "L\\b(?!/)");
    /** Such as {@code 2140 L (1964 to 2251)}. */
    private static final Pattern SPREAD =
            Pattern.compile(NUMBER + " L \\(" + NUMBER + "(?: L)? to " + NUMBER + "( L)?\\)");

    private static final Pattern HEIGHT = Pattern.compile(RANGE + "mm\\b");
    /** A difference of temperatures: with a sign, or by the words around it. */
    private static final Pattern CHANGE = Pattern.compile("(?<![\\w.])(?:(?<=\\b(?:by|within) )" + NUMBER
            + "|([+-]\\d+(?:\\.\\d+)?)|" + NUMBER + "(?= C(?:el)? an hour)) C(?:el)?\\b");

    private static final Pattern WARMTH = Pattern.compile(RANGE + "C(?:el)?\\b");

    private static final double G_PER_OUNCE = 28.349523125;
    private static final double LB_PER_KG = 1 / 0.45359237;
    private static final double GALLON_PER_L = 1 / DisplayUnits.L_PER_GALLON;
    private static final double FT2_PER_M2 = 1 / (0.3048 * 0.3048);

    private UsWords() {}

    /** The passages for a site. */
    static List<Passage> of(List<Passage> passages, Units units) {
        return passages.stream()
                .map(p -> new Passage(p.label(), of(p.text(), units), p.tone()))
                .toList();
    }

    /** The text for a site; as it is where the site reads metric. */
    public static String of(String text, Units units) {
        return units == Units.US ? us(text) : text;
    }

    /** A number with its unit as it stands in a table; null where the unit is not one that changes. */
    public static @Nullable Shown shown(double value, String unit) {
        return switch (unit) {
            case "g" -> new Shown(value / G_PER_OUNCE, "oz");
            case "kg" -> new Shown(value * LB_PER_KG, "lb");
            case "m2" -> new Shown(value * FT2_PER_M2, "ft2");
            case "kg/m3" -> new Shown(value * LB_PER_KG / (1000 * GALLON_PER_L), "lb/gal");
            case "L" -> new Shown(value * GALLON_PER_L, "gal");
            case "L/min" -> new Shown(value * GALLON_PER_L, "gal/min");
            case "mm" -> new Shown(value / DisplayUnits.MM_PER_INCH, "in");
            case "Cel" -> new Shown(value * 9 / 5 + 32, "F");
            default -> null;
        };
    }

    /** A value and the unit it is in. */
    public record Shown(double value, String unit) {}

    /** What is said of the water alone, where every mass is of a chemical: litres, flows, heights and temperatures. */
    public static String water(String text, Units units) {
        return units == Units.US ? water(text) : text;
    }

    static String water(String text, Frame frame) {
        return water(text, frame.snapshot().site().units());
    }

    private static String us(String text) {
        double perGallon = LB_PER_KG / (1000 * GALLON_PER_L);
        String out = LOAD.matcher(text).replaceAll(m -> range(m, v -> v * perGallon, 2, "lb/gal"));
        out = GUIDE.matcher(out)
                .replaceAll(m -> "guide " + Words.number(Double.parseDouble(m.group(1)) * perGallon, 2));
        out = EACH.matcher(out)
                .replaceAll(m -> ounces(m.group(1)) + " oz" + m.group(2) + " (" + ounces(m.group(3)) + " to "
                        + ounces(m.group(4)) + ")");
        out = AMOUNT.matcher(out).replaceAll(m -> range(m, v -> v / G_PER_OUNCE, 1, "oz"));
        out = BULK.matcher(out).replaceAll(m -> range(m, v -> v * LB_PER_KG, 1, "lb"));
        out = AREA.matcher(out).replaceAll(m -> range(m, v -> v * FT2_PER_M2, 1, "ft2"));
        return water(out);
    }

    private static String water(String text) {
        String out = SPREAD.matcher(text)
                .replaceAll(m -> gallons(m.group(1)) + " gal (" + gallons(m.group(2)) + " to " + gallons(m.group(3))
                        + (m.group(4) == null ? ")" : " gal)"));
        out = FLOW.matcher(out).replaceAll(m -> range(m, v -> v * GALLON_PER_L, flowDecimals(m), "gal/min"));
        out = VOLUME.matcher(out).replaceAll(m -> range(m, v -> v * GALLON_PER_L, volumeDecimals(m.group(1)), "gal"));
        out = HEIGHT.matcher(out).replaceAll(m -> range(m, v -> v / DisplayUnits.MM_PER_INCH, 1, "in"));
        out = CHANGE.matcher(out).replaceAll(UsWords::change);
        return WARMTH.matcher(out).replaceAll(m -> range(m, v -> v * 9 / 5 + 32, 1, "F"));
    }

    /** A small volume is told to a tenth. */
    private static int volumeDecimals(String litres) {
        return Math.abs(Double.parseDouble(litres)) * GALLON_PER_L < 10 ? 1 : 0;
    }

    private static int flowDecimals(MatchResult m) {
        return Math.abs(Double.parseDouble(m.group(1))) * GALLON_PER_L < 1 ? 2 : 1;
    }

    private static String gallons(String litres) {
        return Words.number(Double.parseDouble(litres) * GALLON_PER_L, volumeDecimals(litres));
    }

    private static String change(MatchResult m) {
        String plain = m.group(1) != null ? m.group(1) : m.group(3);
        String number = plain != null ? plain : m.group(2);
        int decimals = number.contains(".") ? number.length() - number.indexOf('.') - 1 : 1;
        String changed = Words.number(Double.parseDouble(number) * 9 / 5, decimals);
        return (number.startsWith("+") ? "+" : "") + changed + " F";
    }

    private static String ounces(String grams) {
        return Words.number(Double.parseDouble(grams) / G_PER_OUNCE, 1);
    }

    private static String range(MatchResult m, DoubleUnaryOperator to, int decimals, String unit) {
        String first = (m.group(1).startsWith("+") ? "+" : "")
                + Words.number(to.applyAsDouble(Double.parseDouble(m.group(1))), decimals);
        String second = m.group(3) == null
                ? ""
                : " " + m.group(2) + " " + Words.number(to.applyAsDouble(Double.parseDouble(m.group(3))), decimals);
        return first + second + " " + unit;
    }
}
