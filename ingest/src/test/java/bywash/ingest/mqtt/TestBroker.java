package bywash.ingest.mqtt;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/** A broker in the test's own process, on 127.0.0.1, that keeps nothing. */
final class TestBroker implements AutoCloseable {
    private static final List<Logger> QUIET = List.of(Logger.getLogger("io.moquette"), Logger.getLogger("io.netty"));
    private final Server server = new Server();
    private final int port;
    private final int webSocketPort;
    private final int secureWebSocketPort;

    /**
     * Starts one; it listens for web sockets too.
     *
     * @param wanted 0 for a free one
     */
    TestBroker(int wanted) throws IOException {
        this(wanted, null);
    }

    /** @param keyStore of the server, PKCS 12, for encrypted web sockets; null for none */
    TestBroker(int wanted, @Nullable Path keyStore) throws IOException {
        this.port = wanted == 0 ? MqttFeedTest.freePort() : wanted;
        this.webSocketPort = MqttFeedTest.freePort();
        this.secureWebSocketPort = MqttFeedTest.freePort();
        QUIET.forEach(l -> l.setLevel(Level.OFF));
        Properties p = new Properties();
        p.setProperty(IConfig.HOST_PROPERTY_NAME, "127.0.0.1");
        p.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
        p.setProperty(IConfig.WEB_SOCKET_PORT_PROPERTY_NAME, Integer.toString(webSocketPort));
        p.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        p.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        p.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        if (keyStore != null) {
            p.setProperty(IConfig.WSS_PORT_PROPERTY_NAME, Integer.toString(secureWebSocketPort));
            p.setProperty(IConfig.JKS_PATH_PROPERTY_NAME, keyStore.toString());
            p.setProperty(IConfig.KEY_STORE_TYPE, "PKCS12");
            p.setProperty(IConfig.KEY_STORE_PASSWORD_PROPERTY_NAME, TestCertificates.PASS);
            p.setProperty(IConfig.KEY_MANAGER_PASSWORD_PROPERTY_NAME, TestCertificates.PASS);
        }
        server.startServer(new MemoryConfig(p));
    }

    int port() {
        return port;
    }

    String url() {
        return "mqtt://127.0.0.1:" + port();
    }

    String webSocketUrl() {
        return "ws://127.0.0.1:" + webSocketPort + "/mqtt";
    }

    String secureWebSocketUrl(String host) {
        return "wss://" + host + ":" + secureWebSocketPort + "/mqtt";
    }

    @Override
    public void close() {
        server.stopServer();
    }
}
