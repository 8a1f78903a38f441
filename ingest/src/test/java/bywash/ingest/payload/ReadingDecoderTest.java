package bywash.ingest.payload;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.event.Reading;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingDecoderTest {
    private static final Instant AT = Instant.parse("2026-05-04T06:00:10Z");
    private static final String SITE = """
            name: Test
            id: test
            time-zone: UTC
            vessels:
              sump: {role: sump, shape: {kind: box, length: 1 m, width: 1 m, height: 1 m}}
            probes:
              - {id: level, vessel: sump, quantity: level, topic: level, payload: number, unit: cm}
              - {id: down, vessel: sump, quantity: level, topic: down, payload: number, unit: in, mount: 0.9 m}
              - {id: press, vessel: sump, quantity: level, topic: press, payload: number, unit: kPa}
              - {id: warm, vessel: sump, quantity: temperature, topic: warm, payload: number, unit: degF}
              - {id: pump, vessel: sump, quantity: state, device: pump, topic: pump, payload: number}
              - {id: ph, vessel: sump, quantity: ph, topic: pack, payload: senml, name: ph}
              - {id: temp, vessel: sump, quantity: temperature, topic: pack, payload: senml, name: temp}
              - {id: do, vessel: sump, quantity: dissolved-oxygen, topic: json, payload: {pointer: /o/0/mg~1l}, unit: mg/L}
            """;

    private final List<String> out = new ArrayList<>();
    private final DecodeSink sink = new DecodeSink() {
        @Override
        public void reading(Reading r) {
            out.add(r.probe() + " " + r.value() + (r.at().equals(AT) ? "" : " at " + r.at()));
        }

        @Override
        public void refused(String probeId, Instant at, String reason) {
            out.add(probeId + " refused: " + reason);
        }

        @Override
        public void unknownTopic(String topic) {
            out.add("unknown " + topic);
        }
    };

    static ReadingDecoder decoder() {
        return new ReadingDecoder(siteFile());
    }

    static SiteFile siteFile() {
        return ((SiteFileResult.Good) SiteFileReader.read(SITE, "site.yaml")).siteFile();
    }

    private String decode(String topic, String payload) {
        out.clear();
        decoder().decode(AT, topic, payload.getBytes(UTF_8), false, sink);
        return String.join(" | ", out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            ignoreLeadingAndTrailingWhitespace = true,
            value = {
                "level; 41.3; level 413.0",
                "level; ' +4.13e1 '; level 413.0",
                "level; 0.12345678901234567; level 1.2345678901234567",
                "level; -0; level 0.0",
                "down; 10; down 646.0",
                "press; 5; press 510.879",
                "warm; 77; warm 25.0",
                "pump; ON; pump 1.0",
                "pump; closed; pump 0.0",
                "json; '{\"o\":[{\"mg/l\":7.1}]}'; do 7.1",
                "json; '{\"o\":[{\"mg/l\":\"7.1\"}]}'; do 7.1",
                "other; 1; unknown other",
                "level; ''; level refused: the payload is empty",
                "level; NaN; level refused: \"NaN\" is not a number",
                "level; -inf; level refused: \"-inf\" is not a number",
                "level; 1e999; level refused: \"1e999\" is too large a number",
                "level; 0x1p3; level refused: \"0x1p3\" is not a number",
                "level; 41,3; level refused: \"41,3\" is not a number",
                "level; 1e; level refused: \"1e\" is not a number",
                "level; -60; level refused: level -600 cannot be true: outside -50 to 20000 mm",
                "level; 410; 'level refused: level 4100 mm is outside the vessel of 1000 mm; look at the unit, and at the probe'",
                "pump; maybe; pump refused: \"maybe\" is not a state such as on or off",
                "json; '{\"o\":[]}'; do refused: nothing stands at \"/o/0/mg~1l\"",
                "json; '{\"o\":[{\"mg/l\":[1]}]}'; do refused: the value at \"/o/0/mg~1l\" is not a number",
                "json; '{'; do refused: the payload is not JSON",
                "json; '{\"o\":[{\"mg/l\":1e999}]}'; do refused: the value is too large a number"
            })
    void decodesOrSaysWhyNot(String topic, String payload, String expected) {
        assertEquals(expected, decode(topic, payload).replaceAll("(press \\d+\\.\\d{3})\\d*", "$1"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "'[{\"bn\":\"t:\",\"n\":\"ph\",\"u\":\"pH\",\"v\":7.1},{\"n\":\"temp\",\"u\":\"K\",\"v\":290.15}]'; ph 7.1 | temp 17.0",
                "'[{\"n\":\"temp\",\"u\":\"Cel\",\"v\":17}]'; temp 17.0",
                "'[{\"n\":\"ph\",\"v\":7.1,\"t\":-5}]'; ph 7.1 at 2026-05-04T06:00:05Z",
                "'[{\"n\":\"ph\",\"v\":7.1,\"t\":1777874405}]'; ph 7.1 at 2026-05-04T06:00:05Z",
                "'[{\"n\":\"ph\",\"v\":7.1,\"t\":1277874405}]'; ph refused: the time of the record is more than 7 days before its receipt",
                "'[{\"n\":\"ph\",\"v\":7.1,\"t\":7200}]'; ph refused: the time of the record is more than 1 h ahead of its receipt",
                "'[{\"n\":\"ph\",\"vs\":\"high\"}]'; ph refused: the SenML record has no number",
                "'[{\"n\":\"temp\",\"v\":17}]'; temp refused: the record carries no unit",
                "'[{\"n\":\"temp\",\"u\":\"mV\",\"v\":17}]'; temp refused: unit \"mV\" does not fit temperature"
            })
    void readsSenMl(String payload, String expected) {
        assertEquals(expected, decode("pack", payload));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "'[{\"bver\":11,\"n\":\"ph\",\"v\":7}]'; the SenML version is above 10",
                "'[{\"n\":\"ph\",\"v\":7,\"x_\":1}]'; the SenML label \"x_\" must be understood",
                "'[{\"v\":7}]'; a SenML record has no name",
                "'[{\"n\":\"ph\",\"v\":\"7\"}]'; SenML v is not a number",
                "'[{\"n\":\"ph\",\"v\":7,\"vb\":true}]'; a SenML record has more than one value",
                "'{\"n\":\"ph\"}'; the SenML pack is not an array",
                "'[1]'; a SenML record is not an object",
                "'[]x'; the payload is not JSON"
            })
    void refusesABrokenPackForEachProbe(String payload, String reason) {
        assertEquals("ph refused: " + reason + " | temp refused: " + reason, decode("pack", payload));
    }

    @Test
    void aReasonHoldsNoControlCharacters() {
        assertEquals("level refused: \"a [31m b\" is not a number", decode("level", "a\u001b[31m\nb"));
    }

    @Test
    void boundsSizeAndDepth() {
        assertEquals("level refused: the payload is larger than 64 KB", decode("level", " ".repeat(65_537)));
        assertEquals("level refused: the payload is too long for a number, 65 bytes", decode("level", "1".repeat(65)));
        assertEquals("do refused: the payload is not JSON", decode("json", "[".repeat(60) + "]".repeat(60)));
    }

    @Test
    void aRetainedMessageTakenBackIsNoReading() {
        decoder().decode(AT, "level", new byte[0], true, sink);
        assertEquals(List.of(), out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "level; 41.3; ''",
                "level; 41,3; 'level refused: \"41,3\" is not a number'",
                "pump; on; pump 1.0",
                "json; '{\"o\":[{\"mg/l\":7.1}]}'; ''",
                "pack; '[{\"n\":\"ph\",\"v\":7.1}]'; ''",
                "pack; '[{\"n\":\"ph\",\"v\":7.1,\"t\":-5}]'; ''",
                "pack; '[{\"n\":\"ph\",\"v\":7.1,\"t\":1777874105}]'; ph 7.1 at 2026-05-04T05:55:05Z"
            })
    void ofARetainedMessageOnlyAStateAndWhatHasItsOwnTimeIsAReading(String topic, String payload, String expected) {
        decoder().decode(AT, topic, payload.getBytes(UTF_8), true, sink);
        assertEquals(expected, String.join(" | ", out));
    }

    @Test
    void aReadingIsNoYoungerThanItsReceipt() {
        assertEquals("ph 7.1", decode("pack", "[{\"n\":\"ph\",\"v\":7.1,\"t\":1800}]"));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void noPayloadMakesTheDecoderThrow(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String[] topics = {"level", "pump", "pack", "json", "press"};
        String[] seeds = {
            "41.3",
            "on",
            "[{\"bn\":\"t\",\"n\":\"ph\",\"bt\":1777874405,\"v\":7.1,\"t\":-5}]",
            "{\"o\":[{\"mg/l\":7.1}]}",
            "1e5"
        };
        ReadingDecoder decoder = decoder();
        for (int run = 0; run < 8000; run++) {
            byte[] payload = seeds[random.nextInt(seeds.length)].getBytes(UTF_8);
            for (int i = 0; i < run % 6; i++) {
                payload[random.nextInt(payload.length)] = (byte) random.nextInt(256);
            }
            out.clear();
            decoder.decode(AT, topics[random.nextInt(topics.length)], payload, random.nextBoolean(), sink);
            for (String line : out) {
                assertTrue(line.chars().noneMatch(Character::isISOControl), line);
            }
        }
    }
}
