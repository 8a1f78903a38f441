package bywash.ingest.mqtt;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** So much at once, so much a second in the long run. Time only comes in by the calls. For one thread. */
final class TokenBucket {
    private final double most;
    private final double perSecond;
    private double level;
    private @Nullable Instant last;

    TokenBucket(double most, double perSecond) {
        this.most = most;
        this.perSecond = perSecond;
        this.level = most;
    }

    /** Whether there is so much in it; where there is, a call of {@link #take} will find it. */
    boolean has(double amount, Instant now) {
        Instant before = last;
        if (before == null || now.isAfter(before)) {
            if (before != null) {
                level = Math.min(
                        most, level + perSecond * Duration.between(before, now).toNanos() / 1e9);
            }
            last = now;
        }
        return level >= amount;
    }

    void take(double amount) {
        level -= amount;
    }
}
