package bywash.tui.command;

import java.io.PrintWriter;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;

/** Says what a start is at, where that takes so long that one would wonder; closed when it is done. */
final class SlowStart implements AutoCloseable {
    private static final long WONDERED_AT_S = 1;

    private final PrintWriter to;
    private boolean done;

    private SlowStart(PrintWriter to) {
        this.to = to;
    }

    static SlowStart of(String words, PrintWriter to) {
        return of(words, to, CompletableFuture.delayedExecutor(WONDERED_AT_S, TimeUnit.SECONDS));
    }

    /** @param later runs what it is given when one would wonder */
    static SlowStart of(String words, PrintWriter to, Executor later) {
        SlowStart start = new SlowStart(to);
        later.execute(() -> start.say(words));
        return start;
    }

    private synchronized void say(String words) {
        if (!done) {
            to.println(words);
            to.flush();
        }
    }

    @Override
    public synchronized void close() {
        done = true;
    }
}
