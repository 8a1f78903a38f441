package bywash.ingest.mqtt;

/**
 * How the network library under the client, and under the demo's broker, is to behave. It reads these wishes once, when it
 * loads; so whoever uses it asks first. What somebody has set on the command line stands.
 */
public final class PlainNetty {
    private PlainNetty() {}

    /**
     * Asks for the plain Java transport (the native ones gain nothing here and speak up where they do not load), for buffers
     * of the size in hand instead of a pool that begins with 4 MB, and for no use of {@code sun.misc.Unsafe}, of which newer
     * JDKs warn on standard error.
     */
    public static void ask() {
        wish("io.netty.transport.noNative", "true");
        wish("io.netty.noUnsafe", "true");
        wish("io.netty.allocator.type", "unpooled");
    }

    private static void wish(String name, String value) {
        if (System.getProperty(name) == null) {
            System.setProperty(name, value);
        }
    }
}
