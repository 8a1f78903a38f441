package bywash.rules.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Counters of one alarm that comes and goes. Three raisings within {@link #WITHIN} make it chatter, after which its
 * condition must be gone for {@link #CALM} before it clears; so it stands as one alarm. Both together after the first of
 * the three it counts as a usual one again. Three in a minute is the usual mark
 * of ANSI/ISA-18.2 (from memory); a wider span fits water, which moves slowly.
 */
final class Chatter {
    static final int RAISINGS = 3;
    static final Duration WITHIN = Duration.ofMinutes(15);
    static final Duration CALM = Duration.ofMinutes(10);

    private final Deque<Instant> raised = new ArrayDeque<>();

    void raised(Instant at) {
        raised.addLast(at);
        if (raised.size() > RAISINGS) {
            raised.removeFirst();
        }
    }

    /** The off-delay that holds now. */
    Duration off(Duration usual, Instant at) {
        boolean chatters = raised.size() == RAISINGS
                && !raised.getFirst().isBefore(at.minus(WITHIN).minus(CALM));
        boolean close = chatters
                && Duration.between(raised.getFirst(), raised.getLast()).compareTo(WITHIN) <= 0;
        return close && CALM.compareTo(usual) > 0 ? CALM : usual;
    }
}
