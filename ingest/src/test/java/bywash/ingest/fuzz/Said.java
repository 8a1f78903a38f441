package bywash.ingest.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** What every message to the grower must be, whatever a publisher or a file put into it. */
final class Said {
    private static final int LONGEST = 400;

    private Said() {}

    static void plainly(String message) {
        assertFalse(message.isBlank(), "an empty message");
        assertTrue(message.length() <= LONGEST, () -> "too long: " + message.length());
        assertTrue(
                message.chars().noneMatch(c -> c < ' ' || (c >= 0x7f && c < 0xa0) || c == 0x202e),
                () -> "control characters in: " + message);
    }
}
