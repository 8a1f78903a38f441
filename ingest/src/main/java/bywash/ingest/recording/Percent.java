package bywash.ingest.recording;

import bywash.ingest.site.Measure;
import java.math.BigDecimal;

/** A share written in percent, exact to the double both ways: 0.38 is "38 %". */
final class Percent {
    private Percent() {}

    static String format(double fraction) {
        return new BigDecimal(Double.toString(fraction))
                        .movePointRight(2)
                        .stripTrailingZeros()
                        .toPlainString()
                + " %";
    }

    static double parse(String text) throws Measure.NotAMeasure {
        Measure m = Measure.parse(text);
        double fraction = m.number().movePointLeft(2).doubleValue();
        if (!m.unit().equals("%") || !(fraction >= 0 && fraction <= 1)) {
            throw new Measure.NotAMeasure("\"" + text.strip() + "\" is not a share", "0 % to 100 %");
        }
        return fraction;
    }
}
