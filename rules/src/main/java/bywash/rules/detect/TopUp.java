package bywash.rules.detect;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A declared release into the system.
 *
 * @param endedAt when the grower ended it; null while it runs
 * @param enteredL what the balance says has come in so far, L
 * @param confirmation words on whether the line is shut, empty until known
 */
public record TopUp(
        String vessel,
        String source,
        double plannedL,
        Duration plannedTime,
        Instant startedAt,
        @Nullable Instant endedAt,
        double enteredL,
        String confirmation) {}
