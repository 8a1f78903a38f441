package bywash.tui.demo;

import bywash.ingest.mqtt.PlainNetty;
import io.moquette.BrokerConstants;
import io.moquette.broker.Server;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.util.Properties;

/** An MQTT broker on a free port of the loopback address, in memory alone. */
public final class LoopbackBroker implements AutoCloseable {
    static {
        PlainNetty.ask();
    }

    private final Server server = new Server();
    private final int port;

    /** Starts it; the port is {@link #port()}. */
    public LoopbackBroker() throws IOException {
        this(freePort());
    }

    /** Starts it on a given port. */
    public LoopbackBroker(int port) throws IOException {
        this.port = port;
        Properties settings = new Properties();
        settings.setProperty(BrokerConstants.HOST_PROPERTY_NAME, "127.0.0.1");
        settings.setProperty(BrokerConstants.PORT_PROPERTY_NAME, Integer.toString(port));
        settings.setProperty(BrokerConstants.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        settings.setProperty(BrokerConstants.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        settings.setProperty(BrokerConstants.ENABLE_TELEMETRY_NAME, "false");
        server.startServer(new MemoryConfig(settings));
    }

    public int port() {
        return port;
    }

    public URI url() {
        return URI.create("mqtt://127.0.0.1:" + port);
    }

    @Override
    public void close() {
        server.stopServer();
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}
