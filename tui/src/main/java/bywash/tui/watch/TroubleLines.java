package bywash.tui.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;

/**
 * Tells of what the head line says, for a watch without a screen: a line when something new is wrong and one when it is over,
 * not one for each figure that changes. For the watch's own loop.
 */
final class TroubleLines {
    private static final Duration APART = Duration.ofSeconds(10);

    private Consumer<String> out = line -> {};
    private String last = "";
    private Instant at = Instant.MIN;

    void to(Consumer<String> lines) {
        out = lines;
    }

    void tell(String words, Instant now) {
        String kind = words.replaceAll("[0-9]+", "").replaceAll("\\([^)]*\\)", "");
        if (kind.equals(last) || (at != Instant.MIN && now.isBefore(at.plus(APART)))) {
            return;
        }
        last = kind;
        at = now;
        out.accept(words.isEmpty() ? "the watch itself is in order again" : words);
    }
}
