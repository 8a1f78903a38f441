package bywash.ingest.payload;

import java.time.Duration;
import java.time.Instant;

/** The event time of a SenML record, which must lie near the time of receipt. */
final class SenMlTime {
    private static final double ABSOLUTE_FROM = 1 << 28;
    private static final Duration MOST_AHEAD = Duration.ofHours(1);
    private static final Duration MOST_BEHIND = Duration.ofDays(7);

    private SenMlTime() {}

    /** Whether a time stands on its own, and not against the moment of sending. */
    static boolean absolute(double seconds) {
        return seconds >= ABSOLUTE_FROM;
    }

    /** A reading cannot be younger than its receipt: where its clock runs a little ahead it counts as just received. */
    static Instant of(double seconds, Instant receivedAt) throws PayloadFault {
        if (seconds == 0) {
            return receivedAt;
        }
        if (Math.abs(seconds) > 1e11) {
            throw new PayloadFault("the time of the record is not near the time of receipt");
        }
        double whole = Math.floor(seconds);
        long micros = Math.round((seconds - whole) * 1e6);
        Instant at = seconds < ABSOLUTE_FROM
                ? receivedAt.plusSeconds((long) whole).plusNanos(micros * 1000)
                : Instant.ofEpochSecond((long) whole).plusNanos(micros * 1000);
        if (at.isAfter(receivedAt.plus(MOST_AHEAD))) {
            throw new PayloadFault("the time of the record is more than 1 h ahead of its receipt");
        }
        if (at.isBefore(receivedAt.minus(MOST_BEHIND))) {
            throw new PayloadFault("the time of the record is more than 7 days before its receipt");
        }
        return at.isAfter(receivedAt) ? receivedAt : at;
    }
}
