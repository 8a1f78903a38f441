package bywash.ingest.recording;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.Appetite;
import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Stocking;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingTest {
    private static final Instant AT = Instant.parse("2026-05-04T06:00:10Z");
    private static final String LEVEL = "{\"time\":\"2026-05-04T06:00:10.000Z\",\"topic\":\"larkfield/sump/level\","
            + "\"payload\":\"41.3\",\"qos\":0,\"retain\":false}\n";

    private final List<String> broken = new ArrayList<>();

    private List<RecordedLine> read(byte[] bytes) throws IOException {
        List<RecordedLine> lines = new ArrayList<>();
        try (RecordingReader reader = new RecordingReader(
                new ByteArrayInputStream(bytes), (n, what, right) -> broken.add(n + ": " + what + "; " + right))) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                lines.add(line);
            }
        }
        return lines;
    }

    private static byte[] written(RecordedLine... lines) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (RecordingWriter writer = new RecordingWriter(out)) {
            for (RecordedLine line : lines) {
                writer.write(line);
            }
        }
        return out.toByteArray();
    }

    private static RecordedLine.Message message(String payload) {
        return new RecordedLine.Message(AT, "larkfield/sump/level", payload.getBytes(UTF_8), 0, false);
    }

    private static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(out)) {
            zip.write(plain);
        }
        return out.toByteArray();
    }

    @Test
    void writesAMessageWithKeysInOrder() throws IOException {
        assertEquals(LEVEL + LEVEL, new String(written(message("41.3"), message("41.3")), UTF_8));
    }

    @Test
    void keepsAPayloadThatIsNotUtf8() throws IOException {
        byte[] odd = {(byte) 0xff, 0, 'x'};
        byte[] text = written(new RecordedLine.Message(AT, "t", odd, 1, true));
        assertTrue(new String(text, UTF_8).contains("\"payload64\":\"/wB4\",\"qos\":1,\"retain\":true"));
        RecordedLine.Message m =
                assertInstanceOf(RecordedLine.Message.class, read(text).get(0));
        assertArrayEquals(odd, m.payload());
        assertEquals(List.of(), broken);
    }

    static List<OperatorEntry> entries() {
        return List.of(
                new OperatorEntry.TopUpStart(AT, "sump", "reserve", 160, Duration.ofMinutes(40)),
                new OperatorEntry.TopUpEnd(AT, "sump"),
                new OperatorEntry.BatchFill(AT, "reserve", 800.1),
                new OperatorEntry.BatchTreat(AT, "reserve", "ascorbic-acid", 12),
                new OperatorEntry.BatchTreat(AT, "reserve", "standing", Double.NaN),
                new OperatorEntry.WaterTest(AT, "reserve", "total-chlorine", 0.35),
                new OperatorEntry.WaterTest(AT, "fish-tank", "ph", 6.8),
                new OperatorEntry.WaterTest(AT, "fish-tank", "temperature", 17.2),
                new OperatorEntry.StockingChange(AT, Stocking.FISHLESS),
                new OperatorEntry.Feed(AT, 120, 0.38),
                new OperatorEntry.Feed(AT, 1e-5, Double.NaN),
                new OperatorEntry.FishIn(AT, "spring", "trout", 40, 12.5),
                new OperatorEntry.Harvest(AT, "spring", 2, List.of(412.0, 398.7)),
                new OperatorEntry.Calibrate(AT, "fish-ph", "buffers 4 and 7"),
                new OperatorEntry.Calibrate(
                        AT,
                        "fish-ph",
                        "",
                        List.of(
                                new CalibrationPoint(4.01, "pH", 171.5, "mV"),
                                new CalibrationPoint(8.26, "mg/L", 7.9, "mg/L")),
                        21.5),
                new OperatorEntry.ProbeCare(AT, "fish-do", "new membrane"),
                new OperatorEntry.Feed(AT, 90, 0.32, "spring", Appetite.POOR),
                new OperatorEntry.FishIn(AT, "spring", "nile-tilapia", 40, 12.5, "fish-tank"),
                new OperatorEntry.Harvest(AT, "spring", 3, List.of(412.0), 1210),
                new OperatorEntry.Weigh(AT, "spring", false, 2, 811, List.of(412.0, 399.0)),
                new OperatorEntry.Weigh(AT, "spring", true, 40, 16_000, List.of()),
                new OperatorEntry.FishLoss(AT, "spring", 1, "jumped"),
                new OperatorEntry.FishLoss(AT, "spring", 1, null),
                new OperatorEntry.FishMove(AT, "spring", 10, "fish-tank", "large"),
                new OperatorEntry.FishMove(AT, "spring", 10, OperatorEntry.FishMove.AWAY, null),
                new OperatorEntry.Plant(AT, "bed-1", "lettuce", 0.6),
                new OperatorEntry.CropHarvest(AT, "bed-1", "lettuce", 1350, 0.2),
                new OperatorEntry.CropHarvest(AT, "bed-1", "tomato", 800, 0),
                new OperatorEntry.BedState(AT, "bed-2", false),
                new OperatorEntry.Dose(AT, "sump", "potassium-bicarbonate", 40),
                new OperatorEntry.Dose(AT, "sump", "ammonia-solution", 40, 9.5),
                new OperatorEntry.BatchTreat(AT, "reserve", "thiosulfate", 4, 99),
                new OperatorEntry.Acknowledge(AT, "unplanned-inflow", "sump"),
                new OperatorEntry.Acknowledge(AT, null, null),
                new OperatorEntry.Shelve(AT, "orp-low", "fish-tank", Duration.ofMillis(90_500)),
                new OperatorEntry.Unshelve(AT, "orp-low", "fish-tank"),
                new OperatorEntry.MaintenanceStart(AT, "sump-level", Duration.ofMinutes(20), "cleaning"),
                new OperatorEntry.MaintenanceEnd(AT, "sump-level"),
                new OperatorEntry.OutOfService(AT, "orp-low", "fish-tank", "no spare"),
                new OperatorEntry.ReturnToService(AT, "orp-low", "fish-tank"),
                new OperatorEntry.Note(AT, "a \"quoted\" line\nand another"),
                new OperatorEntry.StepDone(AT, "20260504T073000Z-unplanned-inflow-sump", "stop-water", "both valves"),
                new OperatorEntry.StockingChange(AT, Stocking.FISHLESS, "rainbow-trout"),
                new OperatorEntry.PhAim(AT, 6.8, "potassium-carbonate", 98),
                new OperatorEntry.PhAim(AT, 6.4, OperatorEntry.PhAim.NITRIFICATION, 100),
                new OperatorEntry.Withdraw(AT, "feed", AT.minusSeconds(60), 1, ""),
                new OperatorEntry.Withdraw(AT, "test", AT.minusMillis(60), 2, "typed twice"),
                new OperatorEntry.StepDone(AT, "20260504T073000Z-unplanned-inflow-sump", "air", ""));
    }

    @Test
    void everyEntryReadsBackAsItself() throws Exception {
        for (OperatorEntry entry : entries()) {
            assertEquals(entry, EntryJson.fromJson(EntryJson.toJson(entry)));
        }
        assertEquals(
                EntryKind.values().length,
                entries().stream().map(OperatorEntry::word).distinct().count());
    }

    @Test
    void theKindsAreAllThatThereAre() {
        assertEquals(
                Set.of(OperatorEntry.class.getPermittedSubclasses()),
                Arrays.stream(EntryKind.values()).map(EntryKind::type).collect(Collectors.toSet()));
    }

    @Test
    void writesEntriesAsTheDesignHasThem() {
        assertEquals(
                "{\"time\":\"2026-05-04T06:00:10.000Z\",\"operator\":\"top-up-start\",\"vessel\":\"sump\","
                        + "\"source\":\"reserve\",\"volume\":\"160 L\",\"duration\":\"40 min\"}",
                EntryJson.toJson(entries().get(0)));
        assertTrue(EntryJson.toJson(entries().get(9)).endsWith("\"mass\":\"120 g\",\"protein\":\"38 %\"}"));
        assertTrue(EntryJson.toJson(entries().get(12)).endsWith("\"count\":2,\"masses\":[\"412 g\",\"398.7 g\"]}"));
    }

    @Test
    void saysWhatIsWrongWithAnEntryOnFishOrProbes() {
        String start = "{\"time\":\"2026-05-05T09:00:00Z\",\"operator\":";
        Map<String, String> faults = new LinkedHashMap<>();
        faults.put(
                "\"harvest\",\"cohort\":\"a\",\"count\":2,\"masses\":[\"412 g\"]}",
                "harvest has 1 masses of 2 fish and no \"total\"");
        faults.put(
                "\"harvest\",\"cohort\":\"a\",\"count\":1,\"masses\":[\"412 g\",\"400 g\"]}",
                "\"masses\" of harvest has 2 fish, more than count 1");
        faults.put("\"weigh\",\"cohort\":\"a\",\"of\":\"some\"}", "\"of\" of weigh is \"some\"");
        faults.put("\"calibrate\",\"probe\":\"p\",\"standards\":[\"4\"]}", "calibrate has 1 standards and 0 readings");
        faults.put("\"calibrate\",\"probe\":\"p\"}", "calibrate has no \"detail\"");
        faults.put(
                "\"calibrate\",\"probe\":\"p\",\"standards\":[\"4\"],\"readings\":[\"3 kg\"]}",
                "calibrate: \"3 kg\" is nothing a probe measures");
        faults.put("\"feed\",\"mass\":\"3 g\",\"appetite\":\"wild\"}", "appetite \"wild\" is not known");
        faults.put(
                "\"plant\",\"vessel\":\"b\",\"crop\":\"basil\",\"area\":\"2 m\"}",
                "\"area\" of plant: \"2 m\" is a length, not an area");
        faults.forEach((entry, what) -> assertEquals(
                what,
                assertThrows(BrokenEntry.class, () -> EntryJson.fromJson(start + entry))
                        .what()));
    }

    @Test
    void takesTheStockClientsLines() throws IOException {
        String text = "{\"tst\":\"2026-05-04T07:00:10.123456Z+0100\",\"topic\":\"a\",\"qos\":1,\"retain\":1,"
                + "\"payloadlen\":4,\"payload\":\"41.3\"}\n"
                + "{\"tst\":\"2026-05-04T06:00:10.123456Z+0000\",\"topic\":\"a\",\"qos\":0,\"retain\":0,"
                + "\"payload\":{\"oxygen\":{\"mgl\":7.10}}}\n";
        List<RecordedLine> lines = read(text.getBytes(UTF_8));
        assertEquals(List.of(), broken);
        assertEquals(Instant.parse("2026-05-04T06:00:10.123456Z"), lines.get(0).time());
        assertEquals(lines.get(0).time(), lines.get(1).time());
        assertEquals("{\"oxygen\":{\"mgl\":7.10}}", new String(((RecordedLine.Message) lines.get(1)).payload(), UTF_8));
    }

    @Test
    void reportsEachBrokenLineAndReadsTheRest() throws IOException {
        String entry = "{\"time\":\"2026-05-05T09:00:00Z\",\"operator\":";
        String text = LEVEL
                + "{\"time\":\"2026-05-04T06:00\n"
                + "\r\n"
                + "[1]\n"
                + "{\"time\":\"yesterday\",\"topic\":\"a\",\"payload\":\"1\"}\n"
                + "{\"time\":\"2026-02-29T06:00:00Z\",\"topic\":\"a\",\"payload\":\"1\"}\n"
                + "{\"topic\":\"a\",\"payload\":\"1\"}\n"
                + "{\"time\":\"2026-05-04T06:00:00Z\",\"topic\":\"a\"}\n"
                + entry + "\"flood\"}\n"
                + entry + "\"batch-fill\",\"vessel\":\"reserve\",\"volume\":\"800\"}\n"
                + entry + "\"batch-fill\",\"vessel\":\"reserve\",\"volume\":\"80 cm\"}\n"
                + entry + "\"top-up-end\"}\n"
                + LEVEL.strip();
        assertEquals(2, read(text.getBytes(UTF_8)).size());
        String litres = "a volume in L, l, m3, mL, ml or gal";
        String object = "an object with time, topic and payload, or with time and operator";
        String time = "a time such as 2026-05-04T06:00:10.000Z";
        assertEquals(9 + 1, broken.size(), broken.toString());
        assertTrue(broken.get(0).startsWith("2: not JSON: "), broken.get(0));
        assertEquals(
                List.of(
                        "4: the line is not a JSON object; " + object,
                        "5: \"yesterday\" is not a time; " + time,
                        "6: \"2026-02-29T06:00:00Z\" is not a time; " + time,
                        "7: the line has no time; " + time,
                        "8: the message has no payload; " + object,
                        "9: operator entry \"flood\" is not known; " + EntryKind.words(),
                        "10: \"volume\" of batch-fill: \"800\" has no unit; " + litres,
                        "11: \"volume\" of batch-fill: \"80 cm\" is a length, not a volume; " + litres,
                        "12: top-up-end has no \"vessel\"; \"vessel\" with its text"),
                broken.subList(1, broken.size()));
    }

    @Test
    void readsGzipAndKeepsWhatATruncatedOneHolds() throws IOException {
        byte[] plain = LEVEL.repeat(5000).getBytes(UTF_8);
        byte[] zipped = gzip(plain);
        assertEquals(5000, read(zipped).size());
        assertEquals(List.of(), broken);
        int kept = read(Arrays.copyOf(zipped, zipped.length * 2 / 3)).size();
        assertTrue(kept > 1000 && kept < 5000, "kept " + kept);
        assertEquals(
                List.of((kept + 1) + ": the gzip data end too early or are damaged; "
                        + "a whole .gz; the lines before are kept"),
                broken);
    }

    @Test
    void readsAFileOfSeveralGzipMembers(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("feed.jsonl.gz");
        Files.write(file, gzip(LEVEL.getBytes(UTF_8)));
        Files.write(file, gzip(LEVEL.repeat(2).getBytes(UTF_8)), StandardOpenOption.APPEND);
        try (RecordingReader reader = RecordingReader.open(file, (n, what, right) -> broken.add(what))) {
            while (reader.next() != null) {}
            assertEquals(3, reader.lines());
        }
        assertEquals(List.of(), broken);
    }

    @Test
    void anEmptyRecordingHasNoLines() throws IOException {
        assertEquals(List.of(), read(new byte[0]));
        assertEquals(List.of(), read("\n\n".getBytes(UTF_8)));
        assertEquals(List.of(), broken);
    }

    @Test
    void refusesALineOverOneMegabyteAndReadsOn() throws IOException {
        String huge = "{\"payload\":\"" + "x".repeat(3_000_000) + "\"}\n";
        assertEquals(2, read((LEVEL + huge + LEVEL).getBytes(UTF_8)).size());
        assertEquals(List.of("2: the line is longer than 1 MB; at most 1,000,000 bytes a line"), broken);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void noDamageMakesTheReaderThrow(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        RecordedLine[] lines = entries().stream().map(RecordedLine.Entry::new).toArray(RecordedLine[]::new);
        byte[] whole = (new String(written(lines), UTF_8) + LEVEL.repeat(5)).getBytes(UTF_8);
        for (int run = 0; run < 400; run++) {
            byte[] damaged = run % 2 == 0 ? whole.clone() : gzip(whole);
            for (int i = 0; i < 1 + run % 20; i++) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            read(damaged);
        }
    }
}
