package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.Reading;
import bywash.rules.husbandry.Sites;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By tests alone, no probe: 1 mg/L at 24 Cel has 0.0502 mg/L un-ionised at pH 8 (IFAS FA-16), which is toxic, and far less at pH 7. */
class NitrogenRulesTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    private final AlarmBoard board = new AlarmBoard();
    private final NitrogenRules rules = new NitrogenRules(Sites.site(), board);

    private static WaterTest test(Duration after, String vessel, String quantity, double value) {
        return new WaterTest(T.plus(after), vessel, quantity, value);
    }

    private static WaterTest test(String quantity, double value) {
        return test(Duration.ZERO, "fish-tank", quantity, value);
    }

    private void water(double tanMgL, double ph, double temperatureC) {
        rules.test(test("ph", ph));
        rules.test(test("temperature", temperatureC));
        rules.test(test("total-ammonia", tanMgL));
    }

    private List<AlarmView> after(Duration time, Stocking stocking) {
        Instant at = T.plus(time);
        rules.tick(at, List.of(), stocking);
        board.tick(at);
        return board.views();
    }

    private Map<String, Object> values(Duration time) {
        return after(time, Stocking.FISH).get(0).values();
    }

    @Test
    @DisplayName("the worked example of IFAS FA-16 is raised, with its figures")
    void raisesWhatIsToxic() {
        water(1.0, 8.0, 24);
        AlarmView alarm = after(Duration.ZERO, Stocking.FISH).get(0);
        assertEquals(AlarmKind.AMMONIA_TOXIC, alarm.kind());
        assertEquals("fish-tank", alarm.subject());
        assertEquals(Map.of("tan_mg_l", 1.0, "nh3_n_mg_l", 0.050, "ph", 8.0, "temperature_cel", 24.0), alarm.values());
    }

    @Test
    void isNothingWithoutFishOrATest() {
        assertEquals(List.of(), after(Duration.ZERO, Stocking.FISH));
        water(1.0, 8.0, 24);
        assertEquals(List.of(), after(Duration.ZERO, Stocking.FISHLESS));
    }

    @Test
    void aTestOfPhCountsForADayThenTheToxicSideIsAssumed() {
        water(1.0, 7.0, 24);
        assertEquals(List.of(), after(Duration.ofHours(24), Stocking.FISH));
        Map<String, Object> values = values(Duration.ofHours(24).plusSeconds(5));
        assertEquals(8.0, values.get("ph"));
        assertEquals(28.0, values.get("temperature_cel"));
    }

    @Test
    void aReservesWaterSaysNothingOfTheFish() {
        water(1.0, 7.0, 24);
        rules.test(test(Duration.ofMinutes(1), "reserve", "total-ammonia", 30));
        rules.test(test(Duration.ofMinutes(1), "reserve", "ph", 9));
        assertEquals(List.of(), after(Duration.ofMinutes(2), Stocking.FISH));
    }

    @Test
    void aTestThatIsTakenBackLeavesTheOneBefore() {
        water(0.1, 8.0, 24);
        WaterTest wrong = test(Duration.ofMinutes(1), "fish-tank", "total-ammonia", 10);
        WaterTest right = test("total-ammonia", 0.1);
        rules.test(wrong);
        assertEquals(10.0, values(Duration.ofMinutes(2)).get("tan_mg_l"));
        rules.withdrawn(T.plus(Duration.ofMinutes(3)), test("nitrite", 1), null);
        rules.withdrawn(T.plus(Duration.ofMinutes(3)), right, null);
        assertEquals(10.0, values(Duration.ofMinutes(3)).get("tan_mg_l"), "one that does not count");
        rules.withdrawn(T.plus(Duration.ofMinutes(3)), wrong, right);
        after(Duration.ofMinutes(4), Stocking.FISH);
        assertEquals(T.plus(Duration.ofMinutes(3)), board.views().get(0).easedAt(), "over once its off-delay is, too");
        rules.test(test("ph", 9.5));
        assertEquals(0.1, values(Duration.ofMinutes(5)).get("tan_mg_l"), "the one before counts again");
    }

    @Test
    void moreThanAnyWaterHoldsIsTakenForTheMostThatIsReckoned() {
        water(1200, 7.0, 24);
        assertEquals(1000.0, values(Duration.ZERO).get("tan_mg_l"));
    }

    private static ProbeMonitor ph(String vessel) {
        double value = switch (vessel) {
            case "fish-tank" -> 7.9;
            case "sump" -> 8.1;
            case "bed-1" -> 8.3;
            default -> 9.0;
        };
        Probe probe = new Probe(vessel + "-ph", vessel, Quantity.PH, null, Duration.ofSeconds(30));
        ProbeMonitor monitor = new ProbeMonitor(probe, null);
        monitor.accept(new Reading(probe.id(), T, value));
        return monitor;
    }

    @ParameterizedTest(name = "probes in {0} and {1}: pH {2}")
    @CsvSource({
        "fish-tank, sump, 7.9",
        "sump, fish-tank, 7.9",
        "sump, bed-1, 8.1",
        "reserve, sump, 8.1",
        "reserve, reserve, 8.0"
    })
    void theTestedVesselsOwnProbeComesBeforeAnotherAndAReservesNever(String first, String second, double expected) {
        water(2.0, 8.0, 24);
        rules.tick(T, List.of(ph(first), ph(second)), Stocking.FISH);
        board.tick(T);
        assertEquals(expected, board.views().get(0).values().get("ph"));
    }
}
