package bywash.ingest.site;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a value with a unit measures. Each has one fixed unit that the rules use; every other unit is a scale and an offset
 * from it: fixed = value * scale + offset. Symbols are those of UCUM and of the SenML registry, with the usual spellings.
 * A gallon is the US gallon, 231 cubic inches.
 */
public enum Dimension {
    LENGTH("a length", "mm", "m 1000", "cm 10", "mm 1", "in 25.4", "ft 304.8"),
    AREA("an area", "m2", "m2 1", "dm2 0.01", "cm2 0.0001", "ft2 0.09290304"),
    VOLUME("a volume", "L", "L 1", "l 1", "m3 1000", "mL 0.001", "ml 0.001", "gal 3.785411784"),
    TEMPERATURE(
            "a temperature",
            "Cel",
            "Cel 1",
            "degC 1",
            "°C 1",
            "degF 0.5555555555555556 -17.77777777777778",
            "°F 0.5555555555555556 -17.77777777777778",
            "K 1 -273.15"),
    CONCENTRATION("a concentration", "mg/L", "mg/L 1", "mg/l 1", "ug/L 0.001", "ug/l 0.001", "g/l 1000", "kg/m3 1000"),
    DURATION("a time", "s", "min 60", "h 3600", "s 1", "d 86400", "ms 0.001"),
    MASS("a mass", "g", "g 1", "kg 1000", "mg 0.001", "lb 453.59237", "oz 28.349523125"),
    PRESSURE("a pressure", "kPa", "kPa 1", "hPa 0.1", "Pa 0.001", "mbar 0.1"),
    FLOW(
            "a flow",
            "L/min",
            "L/min 1",
            "l/min 1",
            "L/h 0.016666666666666666",
            "l/s 60",
            "m3/s 60000",
            "gal/min 3.785411784"),
    VOLTAGE("a voltage", "mV", "mV 1", "V 1000"),
    CONDUCTIVITY("a conductivity", "uS/cm", "uS/cm 1", "mS/cm 1000", "S/m 10000"),
    PH("a pH", "pH", "pH 1"),
    FRACTION("a share", "1", "% 0.01", "/100 0.01", "/ 1");

    /** fixed = value * scale + offset; the scale is kept as it was written, so that exact sums stay exact. */
    record Conversion(double scale, double offset, BigDecimal exactScale) {
        double apply(double value) {
            return value * scale + offset;
        }
    }

    private final String phrase;
    private final String fixedUnit;
    private final Map<String, Conversion> units;

    Dimension(String phrase, String fixedUnit, String... table) {
        this.phrase = phrase;
        this.fixedUnit = fixedUnit;
        Map<String, Conversion> map = new LinkedHashMap<>();
        for (String row : table) {
            String[] part = row.split(" ", -1);
            double offset = part.length > 2 ? Double.parseDouble(part[2]) : 0;
            map.put(part[0], new Conversion(Double.parseDouble(part[1]), offset, new BigDecimal(part[1])));
        }
        this.units = Collections.unmodifiableMap(map);
    }

    /** In words, with its article: "a length". */
    public String phrase() {
        return phrase;
    }

    /** The unit that values are converted to. */
    public String fixedUnit() {
        return fixedUnit;
    }

    /** Whether the symbol is a unit of this dimension; symbols are case sensitive. */
    public boolean allows(String unit) {
        return units.containsKey(unit);
    }

    /** The symbols allowed, most usual first: "m, cm, mm, in or ft". */
    public String allowed() {
        StringBuilder text = new StringBuilder();
        int left = units.size();
        for (String unit : units.keySet()) {
            left--;
            text.append(unit).append(left == 0 ? "" : left == 1 ? " or " : ", ");
        }
        return text.toString();
    }

    /**
     * Converts to {@link #fixedUnit()}.
     *
     * @throws IllegalArgumentException for a unit that is not allowed
     */
    public double toFixed(double value, String unit) {
        Conversion conversion = units.get(unit);
        if (conversion == null) {
            throw new IllegalArgumentException(unit + " is not a unit of " + phrase + ", use " + allowed());
        }
        return conversion.apply(value);
    }

    @Nullable
    Conversion conversion(String unit) {
        return units.get(unit);
    }

    /** The dimension that a symbol belongs to, or null. */
    public static @Nullable Dimension of(String unit) {
        for (Dimension d : values()) {
            if (d.allows(unit)) {
                return d;
            }
        }
        return null;
    }
}
