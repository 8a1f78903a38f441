package bywash.tui.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** How a report writes times: local to the site for a reader, with seconds and offset (ISO 8601) for a program. */
enum Times {
    LOCAL("yyyy-MM-dd HH:mm"),
    FULL("yyyy-MM-dd'T'HH:mm:ssxxx");

    private final DateTimeFormatter format;

    Times(String pattern) {
        this.format = DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
    }

    /** Empty for a time that is not known. */
    String of(@Nullable Instant at, ZoneId zone) {
        return at == null ? "" : format.format(at.atZone(zone));
    }
}
