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
    static final String UNSURE = "Not confirmed by the balance: look at the line";

    /** After its end the line is watched for so long at least before it is said to be shut. */
    public static final Duration CHECKED_FOR = Duration.ofMinutes(4);
    /** After so long the balance gives up: it is too noisy to tell. */
    public static final Duration GIVEN_UP_AFTER = Duration.ofMinutes(25);

    /** Both in one sentence, without a full stop; empty until known. */
    public String confirmation() {
        return came.isEmpty() ? line : line + "; " + came;
    }

    /** Whether the balance gave up before it could tell. */
    public boolean unsure() {
        return line.equals(UNSURE);
    }

    /** Whether its end has been told and nobody knows yet whether the line is shut. */
    public boolean checking() {
        return endedAt != null && line.isEmpty();
    }

    public Spread entered() {
        return Spread.of(enteredL, enteredSeL);
    }
}
