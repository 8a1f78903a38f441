package bywash.tui.view;

import bywash.rules.site.Units;

/** Masses and areas in the units the grower reads. Pound 453.59237 g, ounce a sixteenth of it, foot 0.3048 m, gallon 3.785411784 L, all exact. */
public record StockUnits(Units units) {
    private static final double G_PER_POUND = 453.59237;
    private static final double G_PER_OUNCE = G_PER_POUND / 16;
    /** Below these a mass is told to a tenth. */
    private static final double FINE_OUNCES = 100;

    private static final double FINE_GRAMS = 10;
    private static final double M2_PER_FT2 = 0.3048 * 0.3048;
    private static final double M3_PER_GALLON = 0.003785411784;

    public static StockUnits of(Frame frame) {
        return new StockUnits(frame.snapshot().site().units());
    }

    private boolean us() {
        return units == Units.US;
    }

    /** What a fish, a day's feed or a sample is weighed in. */
    public String massUnit() {
        return us() ? "oz" : "g";
    }

    /** What the grower typed, in g. */
    public double grams(double typed) {
        return us() ? typed * G_PER_OUNCE : typed;
    }

    /** Of a fish or a day's feed. */
    public String mass(double grams) {
        return massNumber(grams) + " " + massUnit();
    }

    /** The same without its unit. */
    public String massNumber(double grams) {
        double shown = us() ? grams / G_PER_OUNCE : grams;
        double fine = us() ? FINE_OUNCES : FINE_GRAMS;
        return Words.number(shown, shown != 0 && Math.abs(shown) < fine ? 1 : 0);
    }

    /** Of a whole cohort or a season's feed. */
    public String bulk(double grams) {
        return us() ? Words.number(grams / G_PER_POUND, 1) + " lb" : Words.number(grams / 1000, 1) + " kg";
    }

    public String bulkUnit() {
        return us() ? "lb" : "kg";
    }

    /** In the unit of a whole cohort. */
    public double bulkValue(double grams) {
        return us() ? grams / G_PER_POUND : grams / 1000;
    }

    /** In the unit of a fish. */
    public double massValue(double grams) {
        return us() ? grams / G_PER_OUNCE : grams;
    }

    public double areaValue(double squareMetres) {
        return us() ? squareMetres / M2_PER_FT2 : squareMetres;
    }

    public String areaUnit() {
        return us() ? "ft2" : "m2";
    }

    /** What the grower typed, in m2. */
    public double squareMetres(double typed) {
        return us() ? typed * M2_PER_FT2 : typed;
    }

    public String area(double squareMetres) {
        return us() ? Words.number(squareMetres / M2_PER_FT2, 1) + " ft2" : Words.number(squareMetres, 2) + " m2";
    }

    /** Fish in a volume of tank. */
    public String density(double kgM3) {
        return us()
                ? Words.number(kgM3 * 1000 / G_PER_POUND * M3_PER_GALLON, 2) + " lb/gal"
                : Words.number(kgM3, 1) + " kg/m3";
    }
}
