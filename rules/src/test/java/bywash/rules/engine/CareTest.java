package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.EngineEvent;
import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EngineEvent.ReadingArrived;
import bywash.rules.event.EngineEvent.Tick;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.Reading;
import bywash.rules.recovery.FeedStage;
import bywash.rules.recovery.RecoveryView;
import bywash.rules.response.ResponseSheet;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.Box;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Ammonia, bacteria and the response sheet through the engine, on a site of one sump and one tank. */
class CareTest {
    private final SplittableRandom random = new SplittableRandom(4);
    private final Engine engine = new Engine(site());
    private final List<AlarmTransition> raised = new ArrayList<>();
    private Instant at = Instant.parse("2026-05-04T06:00:00Z");
    private double levelMm = 300;

    @Test
    void ammoniaIsJudgedAtTheLivePhAndRaisedWhenThePhClimbs() {
        run(10, 0, 6.8);
        enter(new WaterTest(at, "tank", "total-ammonia", 1.2));
        run(10, 0, 6.8);
        assertEquals(0, count(AlarmKind.AMMONIA_TOXIC));
        run(10, 0, 8.1);
        AlarmTransition alarm = first(AlarmKind.AMMONIA_TOXIC);
        Object unionised = alarm.values().get("nh3_n_mg_l");
        assertTrue(unionised instanceof Double mgL && mgL > 0.05, alarm.values().toString());
        assertTrue(engine.snapshot().alarms().stream().anyMatch(a -> a.why().contains("IFAS FA-16")));
    }

    @Test
    void climbingAmmoniaIsASetbackOfTheBacteria() {
        run(5, 0, 6.8);
        enter(new WaterTest(at, "tank", "total-ammonia", 0.4));
        at = at.plus(Duration.ofDays(1));
        enter(new WaterTest(at, "tank", "total-ammonia", 1.6));
        run(5, 0, 6.8);
        assertEquals("system", first(AlarmKind.BIOFILTER_SETBACK).subject());
    }

    @Test
    void anOpenValveGivesASheetWithDosesWhoseStepsCanBeTicked() {
        run(60, 0, 6.8);
        run(30, 6, 6.8);
        ResponseSheet sheet = engine.snapshot().care().sheets().get(0);
        assertEquals(first(AlarmKind.UNPLANNED_INFLOW).incident(), sheet.incident());
        assertTrue(sheet.water().get(0).startsWith("sump:"), sheet.water().toString());
        assertTrue(
                sheet.steps().stream()
                        .anyMatch(s -> s.id().equals("dose") && s.words().contains("thiosulfate")),
                sheet.steps().toString());
        enter(new StepDone(at, sheet.incident(), "stop-water", "valve was stiff"));
        run(25, 0, 6.8);
        ResponseSheet after = engine.snapshot().care().sheets().get(0);
        assertNotNull(after.steps().get(0).doneAt());
        assertEquals("valve was stiff", after.steps().get(0).note());
        assertTrue(after.events().stream().anyMatch(e -> e.words().contains("stop-water")));
        assertNotNull(engine.snapshot().care().recovery(), "chlorine was in the water");
    }

    @Test
    void aReserveThatIsNotKnownSafeIsSaidWhenItIsReleased() {
        run(10, 0, 6.8);
        enter(new OperatorEntry.TopUpStart(at, "sump", "reserve", 50, Duration.ofMinutes(10)));
        run(2, 0, 6.8);
        assertTrue(first(AlarmKind.UNSAFE_RELEASE).values().containsKey("residual_high_mg_l"));
        assertEquals(
                "Water of reserve is declared to run in and is not known to be safe",
                first(AlarmKind.UNSAFE_RELEASE).message(),
                "nothing has left it yet");
    }

    @Test
    void aTestOfZeroMakesTheReleaseSafe() {
        run(10, 0, 6.8);
        enter(new WaterTest(at, "reserve", "total-chlorine", 0));
        enter(new OperatorEntry.TopUpStart(at, "sump", "reserve", 50, Duration.ofMinutes(10)));
        run(2, 0, 6.8);
        assertEquals(0, count(AlarmKind.UNSAFE_RELEASE));
    }

    /** With two incidents on record the way back is that of the newer one, all the way. */
    @Test
    void feedIsSteppedBackAfterASecondIncidentToo() {
        run(60, 0, 6.8);
        run(20, 3, 6.8);
        run(60, 0, 6.8);
        enter(new WaterTest(at, "tank", "total-chlorine", 0));
        enter(new OperatorEntry.Acknowledge(at, null, null));
        run(300, 0, 6.8);
        run(20, 3, 6.8);
        run(60, 0, 6.8);
        enter(new WaterTest(at, "tank", "total-chlorine", 0));
        enter(new OperatorEntry.Acknowledge(at, null, null));
        run(300, 0, 6.8);
        List<ResponseSheet> sheets = engine.snapshot().care().sheets();
        assertEquals(2, sheets.size(), raised::toString);
        assertNotNull(sheets.get(0).ended());
        assertNotNull(sheets.get(1).ended());
        for (int day = 1; day <= 5; day++) {
            at = at.plus(Duration.ofDays(1));
            enter(new WaterTest(at, "tank", "total-ammonia", 0.1));
            enter(new WaterTest(at, "tank", "nitrite", 0.1));
            enter(new WaterTest(at, "tank", "total-chlorine", 0));
            run(3, 0, 6.8);
        }
        RecoveryView recovery = Objects.requireNonNull(engine.snapshot().care().recovery());
        assertEquals(sheets.get(0).incident(), recovery.incident());
        assertEquals(FeedStage.FULL, recovery.feed(), recovery.feedWords());
    }

    private void run(int minutes, double inflowLMin, double ph) {
        for (int second = 5; second <= minutes * 60; second += 5) {
            at = at.plusSeconds(5);
            levelMm += inflowLMin / 12 / 0.96;
            if (second % 10 == 0) {
                apply(new ReadingArrived(new Reading("level", at, levelMm + random.nextGaussian())));
                apply(new ReadingArrived(new Reading("ph", at, ph + 0.01 * random.nextGaussian())));
                apply(new ReadingArrived(new Reading("t", at, 22 + 0.03 * random.nextGaussian())));
            }
            apply(new Tick(at));
        }
    }

    private void enter(OperatorEntry entry) {
        apply(new OperatorActed(entry));
    }

    private void apply(EngineEvent event) {
        engine.apply(event).stream()
                .filter(t -> t.state() == AlarmState.UNACKNOWLEDGED)
                .forEach(raised::add);
    }

    private long count(AlarmKind kind) {
        return raised.stream().filter(t -> t.kind() == kind).count();
    }

    private AlarmTransition first(AlarmKind kind) {
        return raised.stream()
                .filter(t -> t.kind() == kind)
                .findFirst()
                .orElseThrow(() -> new AssertionError(kind + " was not raised: " + raised));
    }

    private static Site site() {
        Vessel sump = new Vessel("sump", VesselRole.SUMP, new Box(1200, 800, 750), 652.8, 680, null);
        Vessel tank = new Vessel("tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null);
        Vessel reserve = new Vessel("reserve", VesselRole.RESERVE, null, 900, Double.NaN, "sump");
        Duration every = Duration.ofSeconds(10);
        return new Site(
                "Larkfield",
                "larkfield",
                ZoneOffset.UTC,
                85,
                Stocking.FISH,
                Units.METRIC,
                new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11),
                List.of(sump, tank, reserve),
                List.of(
                        new Probe("level", "sump", Quantity.LEVEL, null, every),
                        new Probe("ph", "tank", Quantity.PH, null, every),
                        new Probe("t", "tank", Quantity.TEMPERATURE, null, every)),
                List.of());
    }
}
