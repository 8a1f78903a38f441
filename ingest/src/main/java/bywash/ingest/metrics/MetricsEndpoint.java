package bywash.ingest.metrics;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** Answers {@code http://127.0.0.1:PORT/metrics} in the Prometheus text format. On loopback alone. */
public final class MetricsEndpoint implements AutoCloseable {
    private static final int GOOD = 200;
    private static final int WRONG_METHOD = 405;

    private final PrometheusMeterRegistry registry = new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    private final HttpServer server;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        Thread t = new Thread(task, "metrics");
        t.setDaemon(true);
        return t;
    });

    private MetricsEndpoint(HttpServer server) {
        this.server = server;
    }

    /**
     * Begins to answer.
     *
     * @param port 0 for any that is free
     * @throws IOException in words, where the port is taken
     */
    public static MetricsEndpoint open(int port) throws IOException {
        HttpServer server;
        try {
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 8);
        } catch (IOException e) {
            throw new IOException(
                    "port " + port + " cannot be used for metrics: " + e.getMessage() + "; give another", e);
        }
        MetricsEndpoint endpoint = new MetricsEndpoint(server);
        server.createContext("/metrics", endpoint::answer);
        server.setExecutor(endpoint.thread);
        server.start();
        return endpoint;
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            if (!exchange.getRequestMethod().equals("GET")) {
                exchange.sendResponseHeaders(WRONG_METHOD, -1);
                return;
            }
            byte[] body = registry.scrape().getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().set("Content-Type", "text/plain; version=0.0.4; charset=utf-8");
            exchange.sendResponseHeaders(GOOD, body.length);
            exchange.getResponseBody().write(body);
        }
    }

    /** Where the figures go. */
    public MeterRegistry registry() {
        return registry;
    }

    public int port() {
        return server.getAddress().getPort();
    }

    @Override
    public void close() {
        server.stop(0);
        thread.shutdownNow();
        registry.close();
    }
}
