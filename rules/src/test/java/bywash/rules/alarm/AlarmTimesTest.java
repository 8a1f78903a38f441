package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** How long each alarm waits, and how soon it calls again. */
class AlarmTimesTest {
    /** Their detectors weigh evidence themselves, and every minute counts; or a test or a timeout has decided already. */
    private static final Set<AlarmKind> AT_ONCE = EnumSet.of(
            AlarmKind.UNPLANNED_INFLOW,
            AlarmKind.UNPLANNED_LOSS,
            AlarmKind.LINE_NOT_SHUT,
            AlarmKind.UNSAFE_RELEASE,
            AlarmKind.PUMP_STOPPED,
            AlarmKind.CHLORINE_RISK,
            AlarmKind.AMMONIA_TOXIC,
            AlarmKind.NITRITE_HIGH,
            AlarmKind.BIOFILTER_SETBACK,
            AlarmKind.PROBE_SILENT,
            AlarmKind.PROBE_STUCK,
            AlarmKind.PROBE_IMPLAUSIBLE);

    @ParameterizedTest
    @EnumSource
    void onlyABareMeasurementWaits(AlarmKind kind) {
        assertEquals(AT_ONCE.contains(kind), AlarmDelays.of(kind).on().isZero());
    }

    @ParameterizedTest
    @EnumSource
    void theWaitTakesNoMoreThanAThirdOfTheTimeToRespond(AlarmKind kind) {
        Duration on = AlarmDelays.of(kind).on();
        assertTrue(on.multipliedBy(3).compareTo(AlarmRationale.of(kind).respondWithin()) <= 0, kind + " " + on);
    }

    @ParameterizedTest
    @DisplayName("seconds on and off; 60 s on for pH and temperature are ANSI/ISA-18.2's starting point (from memory)")
    @CsvSource({
        "OVERFLOW_NEAR, 10, 1200", // a swing of siphons must not clear it
        "LOW_OXYGEN, 30, 120",
        "PH_LOW, 60, 120",
        "PH_HIGH, 60, 120",
        "TEMPERATURE_LOW, 60, 120",
        "TEMPERATURE_HIGH, 60, 120",
        "TEMPERATURE_SWING, 300, 600",
        "ORP_LOW, 300, 600",
        "ORP_RISE, 600, 300",
        "FEED_LOST, 30, 5"
    })
    void aMeasurementWaitsAsItsQuantityMoves(AlarmKind kind, long onSeconds, long offSeconds) {
        assertEquals(
                new AlarmDelays(Duration.ofSeconds(onSeconds), Duration.ofSeconds(offSeconds)), AlarmDelays.of(kind));
    }

    @ParameterizedTest
    @DisplayName("as the README says: critical 10 min, high 30 min, medium 2 h, low never")
    @CsvSource({"CRITICAL, PT10M", "HIGH, PT30M", "MEDIUM, PT2H", "LOW,"})
    void callsAgainBySoMuch(Priority priority, Duration again) {
        for (AlarmKind kind : AlarmKind.values()) {
            if (kind.priority() == priority) {
                assertEquals(again, AlarmDesign.of(kind).announceAgain(), kind.word());
            }
        }
    }

    @Test
    @DisplayName("as the README says: inflow, a line not shut, an unsafe release and chlorine risk are latched")
    void latchesWhereTheHarmOutlastsTheWater() {
        Set<AlarmKind> latched = EnumSet.noneOf(AlarmKind.class);
        for (AlarmKind kind : AlarmKind.values()) {
            if (AlarmDesign.of(kind).latched()) {
                latched.add(kind);
            }
        }
        assertEquals(
                EnumSet.of(
                        AlarmKind.UNPLANNED_INFLOW,
                        AlarmKind.LINE_NOT_SHUT,
                        AlarmKind.UNSAFE_RELEASE,
                        AlarmKind.CHLORINE_RISK),
                latched);
    }
}
