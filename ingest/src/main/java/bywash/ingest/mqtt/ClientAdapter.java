package bywash.ingest.mqtt;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/**
 * The client in one version of the protocol. Its types differ between the two versions and nothing else does; what is the
 * same stands in {@link ClientLink}.
 */
interface ClientAdapter {
    /** Takes one message as the client hands it over. */
    interface Heard {
        void message(String topic, byte[] payload, int qos, boolean retain);
    }

    /** Who hears of all messages; before the connection is made. */
    void onMessage(Heard heard);

    /** A session of its own that ends with the connection; a login where there is a user name. */
    CompletableFuture<?> connect(int keepAliveS, @Nullable String username, byte @Nullable [] password);

    /** Subscribes at QoS 1; completes with the answer, or exceptionally where each topic was refused. */
    CompletableFuture<List<Integer>> subscribe(List<String> topics);

    /** The codes in the exception that the client makes of an answer of refusals alone; null where it is another fault. */
    @Nullable
    List<Integer> refusals(Throwable fault);

    CompletableFuture<?> disconnect();
}
