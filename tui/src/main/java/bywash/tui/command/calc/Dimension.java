package bywash.tui.command.calc;

import java.util.List;
import java.util.stream.Collectors;

/** Kinds of measure that a grower may type, with the units each is understood in and how they become the first of them. */
enum Dimension {
    TEMPERATURE(
            "22 Cel",
            unit("Cel", 1),
            unit("degC", 1),
            unit("C", 1),
            new Unit("degF", 1 / 1.8, -32 / 1.8),
            new Unit("F", 1 / 1.8, -32 / 1.8)),
    VOLUME("800 L", unit("L", 1), unit("mL", 0.001), unit("m3", 1000), unit("gal", 3.785411784)),
    FLOW(
            "4 L/min",
            unit("L/min", 1),
            unit("L/h", 1 / 60.0),
            unit("L/s", 60),
            unit("m3/h", 1000 / 60.0),
            unit("gal/min", 3.785411784),
            unit("gpm", 3.785411784),
            unit("gal/h", 3.785411784 / 60)),
    DAILY_FLOW("50 L/d", unit("L/d", 1), unit("L/day", 1), unit("gal/d", 3.785411784), unit("gal/day", 3.785411784)),
    CONCENTRATION(
            "0.9 mg/L", unit("mg/L", 1), unit("ppm", 1), unit("g/m3", 1), unit("ug/L", 0.001), unit("ppb", 0.001)),
    SALINITY("0.5 g/kg", unit("g/kg", 1), unit("g/L", 1), unit("ppt", 1), unit("psu", 1)),
    LENGTH("0.74 m", unit("mm", 1), unit("cm", 10), unit("m", 1000), unit("in", 25.4), unit("ft", 304.8)),
    AREA("6 m2", unit("m2", 1), unit("ft2", 0.09290304)),
    MASS("12 kg", unit("g", 1), unit("kg", 1000), unit("mg", 0.001), unit("oz", 28.349523125), unit("lb", 453.59237)),
    DAILY_MASS(
            "250 g/d",
            unit("g/d", 1),
            unit("g/day", 1),
            unit("kg/d", 1000),
            unit("oz/d", 28.349523125),
            unit("lb/d", 453.59237)),
    TIME("6 h", unit("h", 1), unit("min", 1 / 60.0), unit("d", 24), unit("day", 24), unit("days", 24)),
    PRESSURE(
            "1005 hPa",
            unit("hPa", 1),
            unit("mbar", 1),
            unit("kPa", 10),
            unit("mmHg", 1.33322387415),
            unit("inHg", 33.86388640341),
            unit("atm", 1013.25)),
    POTENTIAL("310 mV", unit("mV", 1), unit("V", 1000)),
    PERCENT("10 %", unit("%", 1)),
    RATE("0.05 1/h", unit("1/h", 1), unit("/h", 1), unit("1/d", 1 / 24.0), unit("/d", 1 / 24.0)),
    AIR("420 ppm", unit("ppm", 1)),
    PH("7.2", unit("", 1), unit("pH", 1));

    /** A unit: value in the first unit of the kind = scale x value + offset. */
    record Unit(String symbol, double scale, double offset) {}

    private final String example;
    private final List<Unit> units;

    Dimension(String example, Unit... units) {
        this.example = example;
        this.units = List.of(units);
    }

    private static Unit unit(String symbol, double scale) {
        return new Unit(symbol, scale, 0);
    }

    /** A value as one would type it. */
    String example() {
        return example;
    }

    List<Unit> units() {
        return units;
    }

    /** The units as a list to read. */
    String allowed() {
        return units.stream()
                .map(Unit::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .collect(Collectors.joining(", "));
    }
}
