package bywash.rules.response;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times in words, in the site's own zone. */
final class SiteTime {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private SiteTime() {}

    static String words(Instant at, ZoneId zone) {
        return TIME.format(at.atZone(zone));
    }
}
