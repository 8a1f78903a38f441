package bywash.ingest.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.vessel.Box;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SiteFileReaderTest {
    static final String GOOD = """
            name: Larkfield glasshouse
            id: larkfield
            time-zone: Europe/Dublin
            elevation: 85 m
            broker: {url: "mqtts://broker.example:8883", username: grower, password-file: secret, client-id: b1}
            mains: {disinfectant: chlorine, residual: 0.9 mg/L, ph: 7.9, alkalinity: 120 mg/L, temperature: 11 Cel}
            vessels:
              sump:      {role: sump, shape: {kind: box, length: 1.2 m, width: 0.8 m, height: 0.75 m}, overflow: 0.68 m}
              reserve:   {role: reserve, shape: {kind: vertical-cylinder, diameter: 1.1 m, height: 1.2 m}, feeds: sump}
              fish-tank: {role: fish-tank, volume: 1500 L}
            probes:
              - {id: sump-level, vessel: sump, quantity: level, topic: l/level, payload: number, unit: cm, mount: 0.9 m}
              - {id: fish-ph, vessel: fish-tank, quantity: ph, topic: l/fish, payload: senml, name: ph, every: 30 s}
              - {id: fish-do, vessel: fish-tank, quantity: dissolved-oxygen, topic: l/do, payload: {pointer: /o/mgl}, unit: mg/L}
              - {id: pump, vessel: sump, quantity: state, device: pump, topic: l/pump, payload: number}
            limits:
              fish-tank: {ph: {low: 6.2, high: 7.2}, temperature: {high: 77 degF}}
            """;

    static List<String> faults(String text) {
        SiteFileResult result = SiteFileReader.read(text, "site.yaml");
        return result instanceof SiteFileResult.Faulty f
                ? f.problems().stream().map(SiteProblem::toString).toList()
                : List.of();
    }

    @Test
    void readsAGoodFile() {
        assertEquals(List.of(), faults(GOOD));
        SiteFile file = assertInstanceOf(SiteFileResult.Good.class, SiteFileReader.read(GOOD, "site.yaml"))
                .siteFile();
        Site site = file.site();
        assertEquals("larkfield", site.id());
        assertEquals(85, site.elevationM());
        assertEquals(Disinfectant.CHLORINE, site.mains().disinfectant());
        Vessel sump = site.vessel("sump").orElseThrow();
        assertEquals(new Box(1200, 800, 750), sump.shape());
        assertEquals(680, sump.overflowMm(), 1e-9);
        assertEquals(Duration.ofSeconds(30), site.probe("fish-ph").orElseThrow().every());
        assertEquals(Duration.ofSeconds(10), site.probe("pump").orElseThrow().every());
        assertEquals(900, file.bindings().get(0).mountMm());
        assertNull(file.bindings().get(1).unit());
        assertEquals(2, site.limits().size());
        assertEquals(Quantity.TEMPERATURE, site.limits().get(1).quantity());
        assertEquals(25, site.limits().get(1).band().high(), 1e-9);
        assertEquals("broker.example", file.broker().url().getHost());
    }

    @Test
    void readsTheMediaPorosityOfABedAndRefusesItElsewhere() {
        String text = """
                name: Larkfield glasshouse
                id: larkfield
                time-zone: Europe/Dublin
                vessels:
                  bed: {role: grow-bed, volume: 180 L, media-porosity: 46 %}
                  raft: {role: grow-bed, volume: 180 L, media-porosity: 100 %}
                  usual: {role: grow-bed, volume: 180 L}
                  tank: {role: fish-tank, volume: 1500 L@}
                probes:
                  - {id: a, vessel: tank, quantity: orp, topic: t, payload: number, unit: mV}
                """;
        SiteFileResult good = SiteFileReader.read(text.replace("@", ""), "site.yaml");
        Site site = ((SiteFileResult.Good) good).siteFile().site();
        assertEquals(0.46, site.vessel("bed").orElseThrow().mediaPorosity(), 1e-12);
        assertEquals(1, site.vessel("raft").orElseThrow().mediaPorosity(), 1e-12);
        assertEquals(Vessel.USUAL_POROSITY, site.vessel("usual").orElseThrow().mediaPorosity(), 1e-12);
        SiteFileResult bad = SiteFileReader.read(text.replace("@", ", media-porosity: 40 %"), "site.yaml");
        assertEquals(1, ((SiteFileResult.Faulty) bad).problems().size());
    }

    @Test
    void tellsEveryFaultAtOnce() {
        String text = """
                name: Larkfield glasshouse
                id: Larkfield
                time-zone: Europe/Dubln
                elevation: 85
                stocking: fishles
                colour: green
                broker: {url: "http://127.0.0.1", password: secret}
                vessels:
                  sump: {role: sump, shape: {kind: box, length: 1.2 m, width: 0.8, height: 0.75 m}, overflw: 0.68 m}
                  reserve: {role: reserve, shape: {kind: vertical-cylinder, diameter: -1 m, height: 1.2 L}, feeds: pond}
                  bed: {role: grow-bed, shape: {kind: box, length: 1 m, width: 1 m, height: 0.3 m}, overflow: 40 cm}
                  bed: {role: grow-bed, volume: 10 L}
                  tank: {role: fish-tank, volume: 1500 L}
                probes:
                  - {id: a, vessel: tank, quantity: orp, topic: t, payload: number, unit: cm}
                  - {id: a, vessel: tnk, quantity: ph, topic: t, payload: number}
                  - {id: b, vessel: tank, quantity: salt, topic: "t/#", payload: {pointer: o/x}, unit: mV}
                  - {id: c, vessel: tank, quantity: temperature, topic: d, payload: json, every: 10}
                  - {id: d, vessel: tank, quantity: flow, topic: d, payload: number}
                limits:
                  tank: {ph: {low: 8, high: 7}}
                """;
        String lengths = "m, cm, mm, in or ft";
        assertEquals(
                List.of(
                                "site.yaml:2: id \"Larkfield\" is not an id; lower-case letters, digits and hyphens, at most 64",
                                "site.yaml:3: time-zone \"Europe/Dubln\" is not known; did you mean \"Europe/Dublin\"?",
                                "site.yaml:4: elevation \"85\" has no unit; a length in " + lengths,
                                "site.yaml:5: stocking \"fishles\" is not known; did you mean \"fishless\"? Allowed: fish or fishless",
                                "site.yaml:6: key \"colour\" is not known; name, id, time-zone, elevation, stocking, units, broker, "
                                        + "mains, vessels, probes, limits or species",
                                "site.yaml:7: broker: a password does not belong in the site file; "
                                        + "password-file: with the path of a file whose first line is the password",
                                "site.yaml:7: broker: url \"http://127.0.0.1\" has a scheme that is not known; "
                                        + "mqtt, mqtts, ws or wss, such as mqtt://127.0.0.1:1883",
                                "site.yaml:9: vessel sump: key \"overflw\" is not known; did you mean \"overflow\"? "
                                        + "Allowed: role, shape, volume, overflow, feeds or media-porosity",
                                "site.yaml:9: shape of sump: width \"0.8\" has no unit; a length in " + lengths,
                                "site.yaml:10: shape of reserve: diameter -1 m is out of range; 1 mm to 50000 mm",
                                "site.yaml:10: shape of reserve: height \"1.2 L\" is a volume, not a length; a length in "
                                        + lengths,
                                "site.yaml:10: vessels: reserve feeds \"pond\", which is no vessel of the system; sump, bed or tank",
                                "site.yaml:11: vessel bed: overflow 400 mm is above the height of the vessel; at most 300 mm",
                                "site.yaml:12: vessels: key \"bed\" stands twice; each key once",
                                "site.yaml:15: probe a: unit \"cm\" does not fit orp; mV or V",
                                "site.yaml:16: probe a: id \"a\" is taken by a probe above; another id",
                                "site.yaml:16: probe a: vessel \"tnk\" is not known; did you mean \"tank\"? "
                                        + "Allowed: sump, reserve, bed or tank",
                                "site.yaml:16: probe a: topic and field are those of probe a; "
                                        + "another topic, or another name or pointer in the payload",
                                "site.yaml:17: probe b: quantity \"salt\" is not known; level, temperature, ph, dissolved-oxygen, "
                                        + "orp, conductivity, flow or state",
                                "site.yaml:17: probe b: topic \"t/#\" is no single topic; a topic without + and #",
                                "site.yaml:17: payload: pointer \"o/x\" is not a JSON pointer; "
                                        + "RFC 6901: /key/key, with ~1 for / and ~0 for ~",
                                "site.yaml:18: probe c: every \"10\" has no unit; a time in min, h, s, d or ms",
                                "site.yaml:18: probe c: payload \"json\" is not known; number, senml or {pointer: /...}",
                                "site.yaml:19: probe d: unit is missing; unit: L/min, l/min, L/h, l/s, m3/s or gal/min",
                                "site.yaml:21: limits of tank, ph: high is not above low; low below high")
                        .stream()
                        .collect(Collectors.joining("\n")),
                String.join("\n", faults(text)));
    }

    @Test
    void namesWhatAnEmptyMappingLacks() {
        assertEquals(
                List.of(
                        "site.yaml:1: name is missing; the site's name in words",
                        "site.yaml:1: time-zone is missing; a zone such as Europe/Dublin, or UTC",
                        "site.yaml:1: vessels is missing; at least one vessel",
                        "site.yaml:1: probes is missing; a list with at least one probe"),
                faults("id: a\n"));
    }

    @Test
    void aLevelNeedsAShapeAndMountNeedsADistance() {
        String text = GOOD.replace("volume: 1500 L", "volume: 1500 L, overflow: 1 m")
                .replace("vessel: sump, quantity: level", "vessel: fish-tank, quantity: level")
                .replace("unit: cm", "unit: kPa");
        assertEquals(
                List.of(
                        "site.yaml:10: vessel fish-tank: overflow without a shape; a shape, or no overflow",
                        "site.yaml:12: probe sump-level: a level in fish-tank, which has no shape; a shape for fish-tank",
                        "site.yaml:12: probe sump-level: mount goes with a distance, not with a pressure; "
                                + "no mount, or a unit of length"),
                faults(text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''| site.yaml:1: the file is empty; name, id, time-zone, vessels and probes",
                "'- a'| site.yaml:1: not a mapping; keys with values: name, id, time-zone, elevation, stocking, units, broker, "
                        + "mains, vessels, probes, limits or species",
                "'a: {b'| site.yaml:1: not YAML: expected ',' or '}', but got <stream end>; "
                        + "YAML with blanks for indents and one key a line"
            })
    void tellsAFileThatIsNoSiteFile(String text, String message) {
        assertEquals(List.of(message), faults(text));
    }

    @Test
    void tellsAFileThatCannotBeRead(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("site.yaml");
        assertEquals("[site.yaml:1: the file does not exist; the path of a site file]", problems(file));
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe});
        assertEquals("[site.yaml:1: the file is not UTF-8 text; a YAML file in UTF-8]", problems(file));
        Files.write(file, new byte[1_000_001]);
        assertEquals("[site.yaml:1: the file is larger than 1 MB; a site file of a few kilobytes]", problems(file));
        assertEquals(
                "[" + folder.getFileName() + ":1: the file cannot be read; a file that this user may read]",
                problems(folder));
        Files.writeString(file, "[".repeat(500_000));
        assertTrue(SiteFileReader.read(file) instanceof SiteFileResult.Faulty);
        Files.writeString(file, GOOD);
        SiteFile good = ((SiteFileResult.Good) SiteFileReader.read(file)).siteFile();
        assertEquals(
                folder.resolve("secret").toAbsolutePath(), good.broker().login().passwordFile());
    }

    private static String problems(Path file) {
        return ((SiteFileResult.Faulty) SiteFileReader.read(file)).problems().toString();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void noDamageMakesTheReaderThrow(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String marks = "{}[]:,-\"'&*!|>%@`#\n\t 0a~?\0\u2028";
        for (int run = 0; run < 400; run++) {
            StringBuilder text = new StringBuilder(GOOD);
            for (int i = 0; i < 1 + run % 12; i++) {
                int at = random.nextInt(text.length());
                text.setCharAt(at, marks.charAt(random.nextInt(marks.length())));
            }
            for (String fault : faults(text.toString())) {
                assertTrue(fault.startsWith("site.yaml:") && fault.contains("; "), fault);
            }
        }
    }
}
