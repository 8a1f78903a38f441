package bywash.tui.command;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * Gives memory back that a start, a replay of days or a long look at a page has used up. On a machine with much memory the JVM
 * would wait for a heap to fill that a watch never fills, and keep what it once had.
 */
final class GiveBack {
    private static final long AFTER_START_S = 30;
    private static final long EVERY_S = 3600;

    private GiveBack() {}

    /** From now on, as long as the program runs; a collection of what a watch holds takes some ten milliseconds. */
    static void begin() {
        after(AFTER_START_S);
    }

    private static void after(long seconds) {
        CompletableFuture.delayedExecutor(seconds, TimeUnit.SECONDS).execute(() -> {
            System.gc();
            after(EVERY_S);
        });
    }
}
