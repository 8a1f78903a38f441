package bywash.ingest.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.io.IOException;
import java.lang.ref.Reference;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class MetricsTest {
    @Test
    void answersOnLoopbackInTheTextFormat() throws Exception {
        AtomicLong messages = new AtomicLong(7);
        try (MetricsEndpoint endpoint = MetricsEndpoint.open(0)) {
            WatchMetrics metrics = new WatchMetrics(endpoint.registry());
            metrics.counter("messages", "Messages received", messages::get);
            metrics.alarms("acknowledged", () -> 2);
            metrics.loop(Duration.ofMillis(3));
            metrics.lag(Duration.ofMillis(40));
            metrics.refused("\"x\" is not a number");
            String text = get(endpoint.port());
            assertTrue(text.contains("bywash_messages_total 7.0\n"), text);
            assertTrue(text.contains("bywash_alarms{state=\"acknowledged\"} 2.0\n"), text);
            assertTrue(text.contains("bywash_loop_seconds_count 1\n"), text);
            assertTrue(text.contains("bywash_lag_seconds 0.04\n"), text);
            assertTrue(text.contains("bywash_refused_total{reason=\"... is not a number\"} 1.0\n"), text);
            messages.set(8);
            System.gc();
            assertTrue(get(endpoint.port()).contains("bywash_messages_total 8.0\n"));
            Reference.reachabilityFence(metrics); // as the watch's loop holds it
            IOException taken = assertThrows(IOException.class, () -> MetricsEndpoint.open(endpoint.port()));
            assertTrue(String.valueOf(taken.getMessage()).endsWith("; give another"), taken.getMessage());
        }
    }

    private static String get(int port) throws IOException, InterruptedException {
        String host = InetAddress.getLoopbackAddress().getHostAddress();
        URI uri = URI.create("http://" + host + ":" + port + "/metrics");
        HttpResponse<String> answer = HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString());
        assertEquals(200, answer.statusCode());
        return answer.body();
    }

    @Test
    void tellsReasonsApartByTheirWordsAloneAndOnlySoMany() {
        SimpleMeterRegistry registry = new SimpleMeterRegistry();
        WatchMetrics metrics = new WatchMetrics(registry);
        for (int i = 0; i < 1000; i++) {
            metrics.refused("value " + i + ".5 mg/L is outside 0 to 60");
            metrics.refused("text \"" + i + "\" is no number");
        }
        assertEquals(2, registry.find("bywash.refused").counters().size());
        for (char c = 'A'; c <= 'z'; c++) {
            metrics.refused("reason " + c);
        }
        assertEquals(41, registry.find("bywash.refused").counters().size());
    }
}
