package bywash.ingest.mqtt;

import java.time.Duration;

/**
 * How long to wait before the next try: doubling from the first wait to the longest.
 *
 * @param first before the second try
 * @param longest never waits longer than this
 */
public record Backoff(Duration first, Duration longest) {
    /** 1 s, 2 s, 4 s ... 30 s. */
    public static final Backoff USUAL = new Backoff(Duration.ofSeconds(1), Duration.ofSeconds(30));

    public Backoff {
        if (first.isNegative() || first.isZero() || longest.compareTo(first) < 0) {
            throw new IllegalArgumentException("backoff " + first + " to " + longest + ": 0 < first <= longest");
        }
    }

    /**
     * The wait after so many failures in a row.
     *
     * @param failures from 1
     */
    public Duration after(int failures) {
        Duration wait = first;
        for (int i = 1; i < failures && wait.compareTo(longest) < 0; i++) {
            wait = wait.multipliedBy(2);
        }
        return wait.compareTo(longest) < 0 ? wait : longest;
    }
}
