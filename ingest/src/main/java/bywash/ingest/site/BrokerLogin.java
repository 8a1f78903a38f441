package bywash.ingest.site;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Who we are at the broker. A password is named, never written: it stays out of the site file, the process list and
 * the logs.
 *
 * @param passwordFile file whose first line is the password
 * @param passwordEnvironment name of the environment variable that holds it; not beside a file
 * @param certificateFile PEM, our own certificate and what it hangs on; with {@code keyFile} or not at all
 * @param keyFile PEM, its private key in PKCS #8, not encrypted
 */
public record BrokerLogin(
        @Nullable String username,
        @Nullable Path passwordFile,
        @Nullable String passwordEnvironment,
        @Nullable Path certificateFile,
        @Nullable Path keyFile) {
    /** Without a login. */
    public static final BrokerLogin NONE = new BrokerLogin(null, null, null, null, null);
}
