package bywash.tui.view;

import bywash.rules.detect.Spread;
import bywash.rules.site.Band;
import bywash.rules.site.Quantity;
import bywash.rules.site.Units;

/** Values in the units the grower reads. US gallon 3.785411784 L, inch 25.4 mm, both exact. */
public record DisplayUnits(Units units) {
    static final double L_PER_GALLON = 3.785411784;
    static final double MM_PER_INCH = 25.4;

    public String height(double mm) {
        return withUnit(shown(Quantity.LEVEL, mm), us() ? 1 : 0, heightUnit());
    }

    public String volume(double litres) {
        return withUnit(us() ? litres / L_PER_GALLON : litres, 0, volumeUnit());
    }

    /** An estimate with its range, such as {@code 280 L (250 to 310 L)}. */
    public String spread(Spread litres) {
        return volume(litres.likelyL()) + " (" + range(litres.lowL(), litres.highL()) + ")";
    }

    /** Two volumes, such as {@code 250 to 310 L}. */
    public String range(double lowL, double highL) {
        String low = volume(lowL);
        return low.substring(0, low.indexOf(' ')) + " to " + volume(highL);
    }

    /** Those of the frame's site. */
    public static DisplayUnits of(Frame frame) {
        return new DisplayUnits(frame.snapshot().site().units());
    }

    /** A small volume, to a tenth. */
    public String smallVolume(double litres) {
        return withUnit(us() ? litres / L_PER_GALLON : litres, 1, volumeUnit());
    }

    /** A small volume with its sign. */
    public String change(double litres) {
        String number = smallVolume(Math.abs(litres));
        boolean none = !Double.isFinite(litres) || number.startsWith("0.0 ");
        return none ? number : (litres > 0 ? "+" : "-") + number;
    }

    /** A rate without its sign. */
    public String flow(double litresPerMinute) {
        return Words.number(shown(Quantity.FLOW, litresPerMinute), 1) + " " + flowUnit();
    }

    /** With its sign: positive into the vessel. */
    public String netFlow(double litresPerMinute) {
        double value = shown(Quantity.FLOW, litresPerMinute);
        String number = Words.number(Math.abs(value), 1);
        String sign = !Double.isFinite(value) || number.equals("0.0") ? "" : value > 0 ? "+" : "-";
        return sign + number + " " + flowUnit();
    }

    /** What the grower typed as a volume, in L. */
    public double litres(double typed) {
        return us() ? typed * L_PER_GALLON : typed;
    }

    public String volumeUnit() {
        return us() ? "gal" : "L";
    }

    public String value(Quantity quantity, double value) {
        if (quantity == Quantity.STATE) {
            return Double.isNaN(value) ? "--" : value >= 0.5 ? "on" : "off";
        }
        return withUnit(shown(quantity, value), decimals(quantity), unit(quantity));
    }

    /** Such as {@code 6.2 to 7.4}, {@code above 5.0}, or empty. */
    public String band(Quantity quantity, Band band) {
        boolean low = Double.isFinite(band.low());
        boolean high = Double.isFinite(band.high());
        String from = Words.number(shown(quantity, band.low()), bandDecimals(quantity));
        String to = Words.number(shown(quantity, band.high()), bandDecimals(quantity));
        if (low && high) {
            return from + " to " + to;
        }
        return low ? "above " + from : high ? "below " + to : "";
    }

    /** A value of a probe in the unit that is shown. */
    public double shown(Quantity quantity, double value) {
        if (!us()) {
            return value;
        }
        return switch (quantity) {
            case LEVEL -> value / MM_PER_INCH;
            case TEMPERATURE -> value * 9 / 5 + 32;
            case FLOW -> value / L_PER_GALLON;
            case PH, DISSOLVED_OXYGEN, ORP, CONDUCTIVITY, STATE -> value;
        };
    }

    /** A temperature as typed, in Cel. */
    public double celsius(double typed) {
        return us() ? (typed - 32) * 5 / 9 : typed;
    }

    /** The unit shown; empty for pH and states. */
    public String unit(Quantity quantity) {
        return switch (quantity) {
            case LEVEL -> heightUnit();
            case TEMPERATURE -> us() ? "F" : "C";
            case FLOW -> flowUnit();
            case PH, STATE -> "";
            case DISSOLVED_OXYGEN, ORP, CONDUCTIVITY -> quantity.unit();
        };
    }

    private static int decimals(Quantity quantity) {
        return switch (quantity) {
            case PH -> 2;
            case TEMPERATURE, DISSOLVED_OXYGEN, FLOW -> 1;
            case LEVEL, ORP, CONDUCTIVITY, STATE -> 0;
        };
    }

    private static int bandDecimals(Quantity quantity) {
        return quantity == Quantity.PH || quantity == Quantity.DISSOLVED_OXYGEN ? 1 : 0;
    }

    private static String withUnit(double value, int decimals, String unit) {
        String number = Words.number(value, decimals);
        return unit.isEmpty() ? number : number + " " + unit;
    }

    private String heightUnit() {
        return us() ? "in" : "mm";
    }

    private String flowUnit() {
        return us() ? "gal/min" : "L/min";
    }

    private boolean us() {
        return units == Units.US;
    }
}
