package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EngineEvent.Tick;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.Sites;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Band;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.site.SpeciesBand;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Alarms on chlorine and ammonia hold the water against the species in it. */
class SpeciesAlarmTest {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");
    private static final Species PERCH =
            new Species("jade-perch", List.of(new SpeciesBand(Need.CHLORINE, new Band(0, 8), "hatchery sheet 4")));

    private static final Species HARDY =
            new Species("hardy", List.of(new SpeciesBand(Need.CHLORINE, new Band(0, 100), "sheet")));

    private Instant now = START;

    private Optional<AlarmView> alarm(Species own, AlarmKind kind, OperatorEntry... entries) {
        Engine engine = new Engine(Sites.with(own));
        now = START;
        for (OperatorEntry entry : entries) {
            engine.apply(new OperatorActed(entry));
        }
        for (int i = 0; i < 60; i++) {
            now = now.plusSeconds(5);
            engine.apply(new Tick(now));
        }
        return engine.snapshot().alarms().stream().filter(a -> a.kind() == kind).findFirst();
    }

    private static FishIn fish(String species) {
        return new FishIn(START, "spring", species, 40, 100, "fish-tank");
    }

    private static WaterTest test(String quantity, double value) {
        return new WaterTest(START.plusSeconds(1), "fish-tank", quantity, value);
    }

    @Test
    void itsOwnChlorineLimitCountsWhereItHasOne() {
        AlarmView own = alarm(PERCH, AlarmKind.CHLORINE_RISK, fish("jade-perch"), test("total-chlorine", 0.05))
                .orElseThrow();
        assertTrue(own.why().contains("acute 8, chronic 8 ug/L (jade perch, hatchery sheet 4)"), own.why());
        assertFalse(alarm(HARDY, AlarmKind.CHLORINE_RISK, fish("hardy"), test("total-chlorine", 0.05))
                .isPresent());
        AlarmView general = alarm(PERCH, AlarmKind.CHLORINE_RISK, fish("nile-tilapia"), test("total-chlorine", 0.05))
                .orElseThrow();
        assertTrue(general.why().contains("acute 19, chronic 11 ug/L (general, US EPA 1985)"), general.why());
    }

    @Test
    void troutAreHeldToTheirOwnAmmoniaAndTilapiaToTheirs() {
        OperatorEntry[] water = {test("ph", 7.8), test("temperature", 15), test("total-ammonia", 1.9)};
        OperatorEntry[] trout = {fish("rainbow-trout"), water[0], water[1], water[2]};
        OperatorEntry[] tilapia = {fish("nile-tilapia"), water[0], water[1], test("total-ammonia", 1.4)};
        AlarmView own = alarm(PERCH, AlarmKind.AMMONIA_TOXIC, trout).orElseThrow();
        assertTrue(own.why().contains("un-ionised above 0.02 mg/L (rainbow trout, EIFAC"), own.why());
        assertFalse(alarm(PERCH, AlarmKind.AMMONIA_TOXIC, tilapia).isPresent());
    }

    @Test
    void theStrictestOfSeveralCountsAndOneWithoutAFigureCountsAsTheGeneral() {
        Species tilapia = SpeciesTable.builtIn().get(0);
        assertEquals(8, SpeciesLimits.of(List.of(HARDY, PERCH)).acuteUgL(), 1e-9);
        assertEquals(100, SpeciesLimits.of(List.of(HARDY)).acuteUgL(), 1e-9);
        assertEquals(11, SpeciesLimits.of(List.of(HARDY)).chronicUgL(), 1e-9);
        assertEquals(19, SpeciesLimits.of(List.of(HARDY, tilapia)).acuteUgL(), 1e-9);
        assertEquals(SpeciesLimits.GENERAL, SpeciesLimits.of(List.of()));
    }
}
