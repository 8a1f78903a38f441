package bywash.ingest.site;

import java.net.URI;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where the feed comes from.
 *
 * @param url scheme mqtt, mqtts, ws or wss
 * @param passwordFile file whose first line is the password; never kept in the site file
 * @param caFile PEM certificates to trust instead of the system's
 */
public record BrokerSettings(
        URI url,
        @Nullable String username,
        @Nullable Path passwordFile,
        @Nullable Path caFile,
        @Nullable String clientId) {}
