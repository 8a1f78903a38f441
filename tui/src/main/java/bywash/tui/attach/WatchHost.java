package bywash.tui.attach;

import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Frame;
import java.util.concurrent.CompletableFuture;

/** The watch as its callers see it. Any thread. */
public interface WatchHost {
    Frame frame();

    /**
     * Takes down what the grower entered.
     *
     * @return completes when it is on the disk, with false where the journal cannot keep it yet
     */
    CompletableFuture<Boolean> enter(OperatorEntry entry);
}
