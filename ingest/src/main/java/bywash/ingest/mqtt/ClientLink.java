package bywash.ingest.mqtt;

import java.util.List;
import java.util.concurrent.CompletableFuture;

/** One connection in one protocol version. */
interface ClientLink {
    /** Connects and subscribes; completes exceptionally with the reason when it cannot. */
    CompletableFuture<Void> open(List<String> topics);

    void close();
}
