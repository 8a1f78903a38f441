package bywash.rules.husbandry.probes;

import bywash.rules.text.Names;
import bywash.rules.text.Sentence;

/**
 * How a probe wandered between two calibrations, taken as steady over that time.
 *
 * <p>Source: drift corrections in proportion to time, R. J. Wagner and others, 2006, USGS Techniques and Methods 1-D3, from memory.
 *
 * @param error what the later calibration found, unit of the quantity
 * @param days between them (above 0)
 */
public record Drift(double error, double days, String unit) {
    /** Unit of the quantity a day. */
    public double perDay() {
        return error / days;
    }

    /** Unit of the quantity in thirty days. */
    public double perMonth() {
        return 30 * perDay();
    }

    public String words() {
        String of = spaced(unit);
        return Sentence.of("drifted %+.2f%s in %.0f d, %+.2f%s a month", error, of, days, perMonth(), of);
    }

    static String spaced(String unit) {
        return unit.equals("pH") ? "" : " " + Names.unit(unit);
    }
}
