package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import bywash.ingest.site.BrokerLogin;
import bywash.ingest.site.BrokerSettings;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeedSetupTest {
    @ParameterizedTest
    @CsvSource({
        "mqtt://h, h, 1883, mqtt, mqtt://h:1883",
        "mqtts://h, h, 8883, mqtt, mqtts://h:8883",
        "ws://h, h, 80, mqtt, ws://h:80",
        "wss://h/feed/in, h, 443, feed/in, wss://h:443",
        "MQTT://h:1, h, 1, mqtt, mqtt://h:1",
        "mqtt://ann:secret@h, h, 1883, mqtt, mqtt://h:1883",
        "'mqtt://[::1]:9', ::1, 9, mqtt, 'mqtt://[::1]:9'",
    })
    void takesUrlsApartAndNeverShowsALogin(String url, String host, int port, String path, String shown) {
        Endpoint at = Endpoint.of(URI.create(url));
        assertEquals(host, at.host());
        assertEquals(port, at.port());
        assertEquals(path, at.path());
        assertEquals(shown, at.shown());
    }

    @Test
    void theClientIdIsTheSiteFilesOrMadeFromTheSite() {
        BrokerSettings none = BrokerSettings.at(URI.create("mqtt://h"));
        BrokerSettings given = new BrokerSettings(URI.create("mqtt://h"), BrokerLogin.NONE, null, "me");
        assertEquals(
                "bywash-larkfield-7f",
                FeedSetup.of(none, "larkfield", "7f", List.of("a")).clientId());
        assertEquals("me", FeedSetup.of(given, "larkfield", "7f", List.of("a")).clientId());
        assertThrows(IllegalArgumentException.class, () -> FeedSetup.of(none, "x", "y", List.of()));
    }

    @Test
    void waitsLongerEachTimeUpToTheCap() {
        List<Long> waits = List.of(1, 2, 3, 4, 5, 6, 1000).stream()
                .map(n -> Backoff.USUAL.after(n).toSeconds())
                .toList();
        assertEquals(List.of(1L, 2L, 4L, 8L, 16L, 30L, 30L), waits);
        assertThrows(IllegalArgumentException.class, () -> new Backoff(Duration.ZERO, Duration.ofSeconds(1)));
    }
}
