package bywash.ingest.recording;

import bywash.ingest.site.Measure;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/** The strength on a product's label, such as {@code "strength": "85 %"}. */
final class StrengthField {
    private static final String NAME = "strength";

    private StrengthField() {}

    /** In percent; NaN where it is not there. */
    static double of(EntryFields f, String entry) throws BrokenEntry {
        if (!f.has(NAME)) {
            return Double.NaN;
        }
        double percent;
        try {
            percent = 100 * Percent.parse(f.text(NAME));
        } catch (Measure.NotAMeasure e) {
            throw new BrokenEntry("\"strength\" of " + entry + ": " + e.what(), e.right());
        }
        if (!(percent > 0)) {
            throw new BrokenEntry("\"strength\" of " + entry + " is 0", "above 0 %, from the label");
        }
        return percent;
    }

    /** Nothing where it was not read. */
    static void write(JsonGenerator json, double percent) throws IOException {
        if (!Double.isNaN(percent)) {
            EntryWriter.text(json, NAME, Percent.format(percent / 100));
        }
    }
}
