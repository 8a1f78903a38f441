package bywash.rules.alarm;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * Gives alarms with one cause one incident id: an alarm joins the story of one that stands and can have caused it; else it
 * begins its own. Nothing is kept here but the alarms themselves, so that a restart changes no story.
 */
final class Incidents {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final Supplier<List<Alarm>> standing;

    /** @param standing the alarms that are not normal */
    Incidents(Supplier<List<Alarm>> standing) {
        this.standing = standing;
    }

    String assign(AlarmKind kind, String subject, Instant at) {
        return standing.get().stream()
                .filter(other -> !other.incident().isEmpty() && Causes.canFollow(kind, other.kind()))
                .max(Comparator.comparing(Alarm::raisedAt))
                .map(Alarm::incident)
                .orElse(STAMP.format(at) + "-" + kind.word() + "-" + subject);
    }
}
