package bywash.tui.view;

import java.util.Optional;
import java.util.stream.Stream;

/** The manual tests a grower makes with a kit, their words in entries, units, and the range that can be true. */
public enum TestKind {
    TOTAL_CHLORINE("total-chlorine", "total chlorine", "mg/L", 2, 20),
    FREE_CHLORINE("free-chlorine", "free chlorine", "mg/L", 2, 20),
    TOTAL_AMMONIA("total-ammonia", "total ammonia", "mg/L N", 2, 50),
    NITRITE("nitrite", "nitrite", "mg/L", 2, 50),
    NITRATE("nitrate", "nitrate", "mg/L NO3", 0, 2000),
    ALKALINITY("alkalinity", "alkalinity", "mg/L CaCO3", 0, 1000),
    PH("ph", "pH", "", 2, 14);

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

    public String unit() {
        return unit;
    }

    /** More than this is no kit's answer. */
    public double highest() {
        return highest;
    }

    /** A value with its unit. */
    public String words(double value) {
        return (Words.number(value, decimals) + " " + unit).strip();
    }

    /** A value without its unit. */
    static String value(String word, double value) {
        return Words.number(value, of(word).map(k -> k.decimals).orElse(2));
    }

    /** The kind of a word; empty where there is none. */
    public static Optional<TestKind> of(String word) {
        return Stream.of(values()).filter(k -> k.word.equals(word)).findFirst();
    }

    /** What growers say for the word of an entry. */
    static String label(String word) {
        return of(word).map(TestKind::label).orElse(word);
    }

    static String words(String word, double value) {
        return of(word).map(k -> k.words(value)).orElseGet(() -> Words.number(value, 2));
    }
}
