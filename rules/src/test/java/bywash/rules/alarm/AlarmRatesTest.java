package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Against the figures of EEMUA Publication 191: one in ten minutes, more than ten in ten minutes is a flood. */
class AlarmRatesTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    private static AlarmTransition raised(long second, String subject) {
        return new AlarmTransition(
                T.plusSeconds(second),
                AlarmKind.PROBE_SILENT,
                subject,
                AlarmState.UNACKNOWLEDGED,
                Priority.HIGH,
                "i",
                "m",
                Map.of());
    }

    @Test
    void callsElevenInTenMinutesAFloodUntilThereAreFewerThanFive() {
        AlarmRates rates = new AlarmRates();
        for (int i = 0; i < 10; i++) {
            rates.add(raised(i * 50, "p" + i));
        }
        assertEquals(List.of(), rates.floods(), "ten are none yet");
        rates.add(raised(500, "q"));
        rates.add(raised(590, "r"));
        assertEquals(List.of(new AlarmRates.Flood(T, null, 12)), rates.floods());
        assertEquals(12, rates.peakTenMinutes());
        rates.advance(T.plusSeconds(949));
        assertEquals(List.of(new AlarmRates.Flood(T, null, 12)), rates.floods(), "five are left: 350 s and later");
        rates.advance(T.plusSeconds(5000));
        assertEquals(List.of(new AlarmRates.Flood(T, T.plusSeconds(950), 12)), rates.floods());
    }

    @Test
    void countsRaisingsAloneAndTheirMean() {
        AlarmRates rates = new AlarmRates();
        rates.add(raised(0, "p"));
        rates.add(new AlarmTransition(
                T,
                AlarmKind.PROBE_SILENT,
                "p",
                AlarmState.UNACKNOWLEDGED,
                Priority.HIGH,
                "i",
                "m",
                Map.of("announcement", 2.0)));
        rates.add(new AlarmTransition(
                T, AlarmKind.PROBE_SILENT, "p", AlarmState.ACKNOWLEDGED, Priority.HIGH, "i", "m", Map.of()));
        rates.add(raised(3000, "q"));
        assertEquals(2, rates.raised());
        assertEquals(0.333, rates.meanTenMinutes(Duration.ofHours(1)), 1e-3);
    }

    @Test
    void namesWhatChattersAndWhatCallsMost() {
        AlarmRates rates = new AlarmRates();
        for (int second : new int[] {0, 20, 40, 200, 400}) {
            rates.add(raised(second, "p"));
        }
        rates.add(raised(500, "q"));
        assertEquals(List.of(new AlarmRates.Count("probe-silent p", 1)), rates.chattering());
        assertEquals(List.of(new AlarmRates.Count("probe-silent p", 5)), rates.mostFrequent(1));
    }
}
