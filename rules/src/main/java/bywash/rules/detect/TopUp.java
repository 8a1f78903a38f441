package bywash.rules.detect;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A declared release into the system.
 *
 * @param endedAt when the grower ended it; null while it runs
 * @param enteredL what the balance says has come in so far, L
 * @param enteredSeL one standard error of that, L
 * @param line words: while it runs, that nothing comes; once ended, whether the line is shut; empty until known
 * @param came words: how much came in, or came after the end, where the line's words leave that open; else empty
 */
public record TopUp(
        String vessel,
        String source,
        double plannedL,
        Duration plannedTime,
        Instant startedAt,
        @Nullable Instant endedAt,
        double enteredL,
        double enteredSeL,
        String line,
        String came) {
    /** Both in one sentence, without a full stop; empty until known. */
    public String confirmation() {
        return came.isEmpty() ? line : line + "; " + came;
    }

    public Spread entered() {
        return Spread.of(enteredL, enteredSeL);
    }
}
