package bywash.tui.screen;

import bywash.rules.event.OperatorEntry;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;

/** Takes what the grower enters; must not block. */
@FunctionalInterface
public interface Entries {
    /** @return completes when it is on the disk, with false where it only waits for that, or is not kept at all */
    CompletableFuture<Boolean> enter(OperatorEntry entry);

    /** Where nothing is kept, as in a replay. */
    static Entries unkept(Consumer<OperatorEntry> to) {
        return entry -> {
            to.accept(entry);
            return CompletableFuture.completedFuture(true);
        };
    }
}
