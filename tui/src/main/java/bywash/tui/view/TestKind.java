package bywash.tui.view;

import bywash.rules.site.Quantity;
import bywash.rules.text.Names;
import java.util.Optional;
import java.util.stream.Stream;

/** The manual tests a grower makes with a kit or a meter, their words in entries, units, and the range that can be true. */
public enum TestKind {
    TOTAL_CHLORINE("total-chlorine", "total chlorine", "mg/L", 2, 20),
    FREE_CHLORINE("free-chlorine", "free chlorine", "mg/L", 2, 20),
    TOTAL_AMMONIA("total-ammonia", "total ammonia", "mg/L N", 2, 50),
    NITRITE("nitrite", "nitrite", "mg/L", 2, 50),
    NITRATE("nitrate", "nitrate", "mg/L NO3", 0, 2000),
    ALKALINITY("alkalinity", "alkalinity", "mg/L CaCO3", 0, 1000),
    PH("ph", "pH", "", 2, 14),
    DISSOLVED_OXYGEN("dissolved-oxygen", "oxygen", "mg/L", 1, 30),
    TEMPERATURE("temperature", "temperature", "C", 1, 60);

    private final String word;
    private final String label;
    private final String unit;
    private final int decimals;
    private final double highest;

    TestKind(String word, String label, String unit, int decimals, double highest) {
        this.word = word;
        this.label = label;
        this.unit = unit;
        this.decimals = decimals;
        this.highest = highest;
    }

    /** As in recordings. */
    public String word() {
        return word;
    }

    /** As growers say it. */
    public String label() {
        return label;
    }

    /** The unit that it is typed and shown in. */
    public String unit(DisplayUnits units) {
        return this == TEMPERATURE ? units.unit(Quantity.TEMPERATURE) : unit;
    }

    /** Less than this is no kit's answer; in the fixed unit. */
    double lowest() {
        return 0;
    }

    /** More than this is no kit's answer; in the fixed unit. */
    double highest() {
        return highest;
    }

    /** What was typed, in the fixed unit of the quantity. */
    double fixed(double typed, DisplayUnits units) {
        return this == TEMPERATURE ? units.celsius(typed) : typed;
    }

    /** A value in the unit that is shown. */
    double shown(double value, DisplayUnits units) {
        return this == TEMPERATURE ? units.shown(Quantity.TEMPERATURE, value) : value;
    }

    /** A value with its unit. */
    public String words(double value, DisplayUnits units) {
        return (number(value, units) + " " + unit(units)).strip();
    }

    /** A value without its unit. */
    String number(double value, DisplayUnits units) {
        return Words.number(shown(value, units), decimals);
    }

    /** A value of a word's kind without its unit. */
    static String value(String word, double value, DisplayUnits units) {
        return of(word).map(k -> k.number(value, units)).orElseGet(() -> Words.number(value, 2));
    }

    /** The kind of a word; empty where there is none. */
    public static Optional<TestKind> of(String word) {
        return Stream.of(values()).filter(k -> k.word.equals(word)).findFirst();
    }

    /** What growers say for the word of an entry. */
    public static String label(String word) {
        return of(word).map(TestKind::label).orElse(Names.words(word));
    }

    static String words(String word, double value, DisplayUnits units) {
        return of(word).map(k -> k.words(value, units)).orElseGet(() -> Words.number(value, 2));
    }
}
