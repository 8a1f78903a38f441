package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.OutOfService;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.ReturnToService;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.Unshelve;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.Sites;
import bywash.rules.husbandry.season.Surroundings;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The rules take an entry of each kind, and those that can be taken back are gone from the books afterwards. */
class EveryEntryTest {
    private static final Set<EntryKind> WITH_AN_OPPOSITE_OF_THEIR_OWN = EnumSet.of(
            EntryKind.TOP_UP_START,
            EntryKind.TOP_UP_END,
            EntryKind.ACKNOWLEDGE,
            EntryKind.SHELVE,
            EntryKind.UNSHELVE,
            EntryKind.MAINTENANCE_START,
            EntryKind.MAINTENANCE_END,
            EntryKind.OUT_OF_SERVICE,
            EntryKind.RETURN_TO_SERVICE,
            EntryKind.STEP_DONE,
            EntryKind.WITHDRAW);

    private final Engine engine = new Engine(Sites.site());
    private Instant at = Sites.START;

    private Instant next() {
        at = at.plusSeconds(60);
        return at;
    }

    private List<OperatorEntry> oneOfEach() {
        return List.of(
                new FishIn(next(), "spring", "nile-tilapia", 60, 40, "fish-tank"),
                new StockingChange(next(), Stocking.FISH, "nile-tilapia"),
                new Feed(next(), 120, 0.32),
                new Weigh(next(), "spring", false, 5, 210, List.of()),
                new FishLoss(next(), "spring", 1, "jumped"),
                new FishMove(next(), "spring", 5, "sump", "small"),
                new Harvest(next(), "spring", 2, List.of(41.0, 43.0)),
                new Plant(next(), "bed-1", "lettuce", 0.6),
                new CropHarvest(next(), "bed-1", "lettuce", 900, 0.2),
                new BedState(next(), "bed-2", false),
                new Dose(next(), "sump", "potassium-bicarbonate", 40),
                new PhAim(next(), 6.8, "potassium-carbonate", 98),
                new Calibrate(next(), "fish-ph", "two buffers"),
                new ProbeCare(next(), "fish-do", "cleaned"),
                new BatchFill(next(), "reserve", 800),
                new BatchTreat(next(), "reserve", "standing", Double.NaN),
                new WaterTest(next(), "reserve", "total-chlorine", 0),
                new TopUpStart(next(), "sump", "reserve", 100, Duration.ofMinutes(20)),
                new TopUpEnd(next(), "sump"),
                new Acknowledge(next(), null, null),
                new Shelve(next(), "orp-low", "fish-tank", Duration.ofHours(1)),
                new Unshelve(next(), "orp-low", "fish-tank"),
                new MaintenanceStart(next(), "fish-ph", Duration.ofMinutes(20), ""),
                new MaintenanceEnd(next(), "fish-ph"),
                new OutOfService(next(), "orp-low", "fish-tank", ""),
                new ReturnToService(next(), "orp-low", "fish-tank"),
                new Note(next(), "all quiet"),
                new StepDone(next(), "20260301T080000Z-unplanned-inflow-sump", "stop-water", ""));
    }

    private void enter(OperatorEntry entry) {
        engine.apply(new OperatorActed(entry));
    }

    @Test
    void eachIsTakenAndEachThatHasNoOppositeCanBeTakenBack() {
        List<OperatorEntry> all = oneOfEach();
        Set<EntryKind> missing = EnumSet.complementOf(EnumSet.copyOf(kinds(all)));
        assertEquals(EnumSet.of(EntryKind.WITHDRAW), missing);
        all.forEach(this::enter);
        List<OperatorEntry> standing = new ArrayList<>(all);
        standing.removeIf(e -> WITH_AN_OPPOSITE_OF_THEIR_OWN.contains(e.kind()));
        assertEquals(standing, engine.season().standing());
        assertEquals(
                List.of(),
                engine.season()
                        .status(at, new Surroundings(Stocking.FISH, 2000, 0))
                        .remarks());
        for (int i = all.size() - 1; i >= 0; i--) {
            OperatorEntry undone = all.get(i);
            enter(new Withdraw(next(), undone.word(), undone.at(), 1, ""));
            standing.remove(undone);
            assertEquals(standing, engine.season().standing(), undone.word());
        }
        assertEquals(Set.of(), engine.safeReserves());
    }

    private static Set<EntryKind> kinds(List<OperatorEntry> all) {
        return all.stream().map(OperatorEntry::kind).collect(Collectors.toSet());
    }
}
