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
    private static final String RANGE = "(?<![\\w.-])" + NUMBER + "(?: (to|and|instead of) " + NUMBER + ")? ";
    private static final String CHEMICAL =
            "(?! of (?:N\\b|it\\b|nitrogen|ammoni|oxygen|alkalinity|potassium|calcium|phos|nitric|hydro|sul|citric|sodium|asc|thio)"
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
    private static final Pattern CHANGE = Pattern.compile("\\bby " + NUMBER + " Cel\\b");
    private static final Pattern WARMTH = Pattern.compile(RANGE + "Cel\\b");

    private static final double G_PER_OUNCE = 28.349523125;
    private static final double LB_PER_KG = 1 / 0.45359237;
    private static final double GALLON_PER_L = 1 / 3.785411784;
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
            case "mm" -> new Shown(value / 25.4, "in");
            case "Cel" -> new Shown(value * 9 / 5 + 32, "F");
            default -> null;
        };
    }

    /** A value and the unit it is in. */
    public record Shown(double value, String unit) {}

    private static String us(String text) {
        double perGallon = LB_PER_KG / (1000 * GALLON_PER_L);
        String out = LOAD.matcher(text).replaceAll(m -> range(m, v -> v * perGallon, 2, "lb/gal"));
        out = GUIDE.matcher(out)
                .replaceAll(m -> "guide " + Words.number(Double.parseDouble(m.group(1)) * perGallon, 2));
        out = EACH.matcher(out)
                .replaceAll(m -> ounces(m.group(1)) + " oz" + m.group(2) + " (" + ounces(m.group(3)) + " to "
                        + ounces(m.group(4)) + ")");
        out = FLOW.matcher(out).replaceAll(m -> range(m, v -> v * GALLON_PER_L, 1, "gal/min"));
        out = AMOUNT.matcher(out).replaceAll(m -> range(m, v -> v / G_PER_OUNCE, 1, "oz"));
        out = BULK.matcher(out).replaceAll(m -> range(m, v -> v * LB_PER_KG, 1, "lb"));
        out = AREA.matcher(out).replaceAll(m -> range(m, v -> v * FT2_PER_M2, 1, "ft2"));
        out = VOLUME.matcher(out).replaceAll(m -> range(m, v -> v * GALLON_PER_L, 0, "gal"));
        out = CHANGE.matcher(out)
                .replaceAll(m -> "by " + Words.number(Double.parseDouble(m.group(1)) * 9 / 5, 1) + " F");
        return WARMTH.matcher(out).replaceAll(m -> range(m, v -> v * 9 / 5 + 32, 1, "F"));
    }

    private static String ounces(String grams) {
        return Words.number(Double.parseDouble(grams) / G_PER_OUNCE, 1);
    }

    private static String range(MatchResult m, DoubleUnaryOperator to, int decimals, String unit) {
        String first = Words.number(to.applyAsDouble(Double.parseDouble(m.group(1))), decimals);
        String second = m.group(3) == null
                ? ""
                : " " + m.group(2) + " " + Words.number(to.applyAsDouble(Double.parseDouble(m.group(3))), decimals);
        return first + second + " " + unit;
    }
}
