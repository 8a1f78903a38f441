package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.chlorine.ChlorineMemory;
import bywash.rules.chlorine.Treatment;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.water.Dechlorinator;
import bywash.samples.SampleRecordings;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.SimulatedSite;
import bywash.samples.simulation.SiteModel;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChlorineMemoryJsonTest {
    /** After a filling, an inflow, tests, a treatment and a dose. */
    private static ChlorineMemory memory() throws Exception {
        Instant start = SampleRecordings.start();
        SimulatedSite site = new SimulatedSite(
                SiteModel.larkfield(),
                List.of(new Action.FillReserve(100, 130, 9, 0.9), new Action.InflowIntoSump(200, 235, 5, 0.9)),
                start,
                Duration.ofMinutes(421),
                5);
        Pipeline pipeline = new Pipeline(Larkfield.site(), transition -> {}, reading -> {});
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            pipeline.accept(line);
        }
        Instant at = start.plus(Duration.ofMinutes(421));
        pipeline.enter(new BatchTreat(at, "reserve", Treatment.ASCORBIC_ACID.word(), Double.NaN, Double.NaN));
        pipeline.enter(new WaterTest(at, "reserve", "total-chlorine", 0.4));
        pipeline.enter(new WaterTest(at, "fish-tank", "total-chlorine", 0.03));
        pipeline.enter(new Dose(at, "fish-tank", Dechlorinator.ASCORBIC_ACID.word(), 1.5));
        pipeline.advanceTo(start.plus(Duration.ofMinutes(481)));
        return Objects.requireNonNull(pipeline.chlorine());
    }

    @Test
    void whatIsReadIsWhatWasWritten() throws Exception {
        ChlorineMemory memory = memory();
        assertFalse(memory.system().came().isEmpty());
        assertFalse(memory.system().tested().isEmpty());
        assertFalse(memory.system().dosed().isEmpty());
        assertFalse(memory.batches().get(0).steps().isEmpty());
        assertEquals(
                memory, ChlorineMemoryJson.read(ChlorineMemoryJson.of(memory)).orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "null", "7", "{}", "{\"at\":\"2026-05-04T06:00:00Z\"}", "[1]"})
    void whatIsSpoiltIsNothing(String text) {
        assertTrue(ChlorineMemoryJson.read(text).isEmpty());
    }

    @Test
    void whatIsCutShortOrOutOfRangeIsNothing() throws Exception {
        String good = ChlorineMemoryJson.of(memory());
        for (int end = 0; end < good.length(); end += 97) {
            assertTrue(ChlorineMemoryJson.read(good.substring(0, end)).isEmpty());
        }
        String spoilt = good.replaceFirst("\"likelyMgL\":[0-9.E-]+", "\"likelyMgL\":-4");
        assertFalse(spoilt.equals(good));
        assertTrue(ChlorineMemoryJson.read(spoilt).isEmpty());
    }
}
