package bywash.rules.detect;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Water that a vessel's balance found to have moved, undeclared. Litres, positive in; errors one standard error.
 *
 * @param until when it ended; null while it runs
 */
public record Moved(Instant since, @Nullable Instant until, double litres, double seL) {
    public Spread spread() {
        return Spread.of(litres, seL);
    }
}
