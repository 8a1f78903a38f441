package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.engine.Snapshot;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.samples.demo.DemoFeed;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The demo's site comes with its season on record, and without an alarm from it. */
final class DemoSeasonTest {
    @Test
    void theSeasonSoFarIsOnRecordAndRaisesNothing() throws Exception {
        List<Object> raised = new ArrayList<>();
        Pipeline pipeline = new Pipeline(Larkfield.site(), raised::add, reading -> {});
        DemoFeed.season().forEach(pipeline::remember);
        pipeline.advanceTo(DemoFeed.START);
        Snapshot snapshot = pipeline.snapshot();
        SeasonStatus season = snapshot.season();
        assertNotNull(season);
        assertEquals(List.of(), season.remarks());
        assertEquals("nile-tilapia", season.cohorts().get(0).species());
        assertTrue(season.cohorts().get(0).count() > 70, season.cohorts().toString());
        assertTrue(
                season.beds().stream().allMatch(b -> b.plantedM2() > 0),
                season.beds().toString());
        assertEquals(List.of(), raised);
    }
}
