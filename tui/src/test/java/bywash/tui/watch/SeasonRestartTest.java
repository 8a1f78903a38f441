package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.season.SeasonStatus;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was entered long ago, late or taken back stands the same after the watch was started anew. */
final class SeasonRestartTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    @TempDir
    Path dir;

    private Instant now = T0;

    private SeasonStatus season(List<OperatorEntry> entries) throws Exception {
        Station station = Station.open(Larkfield.site(), dir, () -> now);
        for (OperatorEntry entry : entries) {
            now = entry.at().isAfter(now) ? entry.at() : now;
            station.watch().enter(entry);
            station.watch().step(List.of());
        }
        now = now.plusSeconds(60);
        station.watch().step(List.of());
        SeasonStatus season = station.watch().latest().snapshot().season();
        station.watch().end();
        assertNotNull(season);
        return season;
    }

    private static Instant at(int hours) {
        return T0.plus(Duration.ofHours(hours));
    }

    @Test
    void theBooksAreTheSameAfterARestart() throws Exception {
        SeasonStatus before = season(List.of(
                new FishIn(at(0), "spring", "nile-tilapia", 60, 100, "fish-tank"),
                new Feed(at(6), 90, 0.32),
                new FishLoss(at(12), "spring", 20, "typed wrong"),
                new Plant(at(18), "bed-1", "lettuce", 1.2),
                new Withdraw(at(24), "fish-loss", at(12), 1, "2 was meant"),
                new FishLoss(at(13), "spring", 2, null),
                new Feed(at(120), 95, 0.32),
                new Weigh(at(60), "spring", true, 58, 58 * 104.0, List.of()),
                new PhAim(at(126), 6.8, "potassium-bicarbonate", 100)));
        SeasonStatus after = season(List.of());
        assertEquals(before.cohorts(), after.cohorts());
        assertEquals(before.beds(), after.beds());
        assertEquals(before.feed().totalG(), after.feed().totalG(), 1e-9);
        assertEquals(before.ph().aim(), after.ph().aim());
        assertEquals(List.of(), after.remarks());
        assertEquals(58, after.cohorts().get(0).count());
        assertEquals(2, after.cohorts().get(0).lost());
        assertEquals(104, after.cohorts().get(0).weighings().get(0).meanG(), 1e-9);
    }
}
