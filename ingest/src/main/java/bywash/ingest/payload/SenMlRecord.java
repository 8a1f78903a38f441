package bywash.ingest.payload;

import org.jspecify.annotations.Nullable;

/**
 * One resolved SenML record (RFC 8428 section 4.6).
 *
 * @param name base name and name together
 * @param unit SenML symbol; null where none is given
 * @param time seconds: below 2^28 relative to now, else since 1970
 * @param number value with the base value added; NaN where the value is of another kind
 * @param text the value where it is a text
 * @param flag the value where it is a boolean
 */
record SenMlRecord(
        String name,
        @Nullable String unit,
        double time,
        double number,
        @Nullable String text,
        @Nullable Boolean flag) {}
