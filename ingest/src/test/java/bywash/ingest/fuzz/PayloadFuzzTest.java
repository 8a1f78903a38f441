package bywash.ingest.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.payload.DecodeSink;
import bywash.ingest.payload.ReadingDecoder;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.event.Reading;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A hostile publisher: whatever it sends becomes finite readings or refusals in plain words, and never throws. */
class PayloadFuzzTest {
    private static final int CASES = 10_000 * Integer.getInteger("fuzz.times", 1);
    private static final Instant NOW = Instant.parse("2026-05-04T06:00:00Z");
    private static final String SITE = """
            name: Larkfield glasshouse
            id: larkfield
            time-zone: Europe/Dublin
            mains: {disinfectant: chlorine, residual: 0.9 mg/L}
            vessels:
              sump: {role: sump, shape: {kind: box, length: 1.2 m, width: 0.8 m, height: 0.75 m}, overflow: 0.68 m}
              tank: {role: fish-tank, volume: 1500 L}
            probes:
              - {id: level, vessel: sump, quantity: level, topic: number, payload: number, unit: cm}
              - {id: pump, vessel: sump, quantity: state, device: pump, topic: state, payload: number}
              - {id: ph, vessel: tank, quantity: ph, topic: senml, payload: senml, name: ph}
              - {id: temp, vessel: tank, quantity: temperature, topic: senml, payload: senml, name: temp}
              - {id: do, vessel: tank, quantity: dissolved-oxygen, topic: json, payload: {pointer: /oxygen/mgl}, unit: mg/L}
            """;
    private static final Map<String, List<String>> GOOD = Map.of(
            "number", List.of("41.3", " -7e-3\n", "00012.50"),
            "state", List.of("on", "OFF", "1"),
            "senml",
                    List.of(
                            "[{\"bn\":\"urn:dev:mac:0024befffe804ff1/\",\"bt\":1777874400,\"n\":\"ph\",\"v\":6.8,\"u\":\"pH\"},"
                                    + "{\"n\":\"temp\",\"u\":\"Cel\",\"v\":22.1,\"t\":-5}]",
                            "[{\"n\":\"ph\",\"v\":6.8}]"),
            "json",
                    List.of(
                            "{\"oxygen\":{\"mgl\":7.8,\"note\":\"ok\"},\"a\":[1,2,{}]}",
                            "{\"oxygen\":{\"mgl\":\"7.8\"}}"));

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void everyPayloadEndsAsReadingsOrRefusals(long seed) {
        Mangler mangler = new Mangler(seed);
        ReadingDecoder decoder = new ReadingDecoder(site());
        Outcome outcome = new Outcome();
        List<String> topics = GOOD.keySet().stream().sorted().toList();
        for (int i = 0; i < CASES; i++) {
            String topic = topics.get(mangler.below(topics.size()));
            List<String> good = GOOD.getOrDefault(topic, List.of());
            byte[] payload = mangler.below(10) == 0
                    ? mangler.noise(300)
                    : mangler.mangle(good.get(mangler.below(good.size())).getBytes(StandardCharsets.UTF_8));
            int before = outcome.readings + outcome.refusals;
            decoder.decode(NOW, topic, payload, false, outcome);
            assertTrue(
                    outcome.readings + outcome.refusals > before,
                    () -> "neither read nor refused on " + topic + ": " + new String(payload, StandardCharsets.UTF_8));
        }
        assertEquals(0, outcome.unknown);
        assertTrue(outcome.readings > CASES / 20 && outcome.refusals > CASES / 20, outcome::toString);
    }

    private static final class Outcome implements DecodeSink {
        private int readings;
        private int refusals;
        private int unknown;

        @Override
        public void reading(Reading reading) {
            readings++;
            assertTrue(Double.isFinite(reading.value()), () -> "not finite: " + reading);
        }

        @Override
        public void refused(String probeId, Instant at, String reason) {
            refusals++;
            Said.plainly(reason);
        }

        @Override
        public void unknownTopic(String topic) {
            unknown++;
        }

        @Override
        public String toString() {
            return readings + " readings, " + refusals + " refusals";
        }
    }

    static SiteFile site() {
        if (SiteFileReader.read(SITE, "site.yaml") instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        throw new AssertionError("the test's site is faulty: " + SiteFileReader.read(SITE, "site.yaml"));
    }

    static String siteText() {
        return SITE;
    }
}
