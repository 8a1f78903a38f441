package bywash.ingest.site;

import java.net.URI;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where the feed comes from.
 *
 * @param url scheme mqtt, mqtts, ws or wss
 * @param caFile PEM certificates to trust instead of the system's
 */
public record BrokerSettings(
        URI url,
        BrokerLogin login,
        @Nullable Path caFile,
        @Nullable String clientId) {
    /** A broker that asks for no login. */
    public static BrokerSettings at(URI url) {
        return new BrokerSettings(url, BrokerLogin.NONE, null, null);
    }
}
