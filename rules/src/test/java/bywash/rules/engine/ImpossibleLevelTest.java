package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.EngineEvent.ReadingArrived;
import bywash.rules.event.EngineEvent.Tick;
import bywash.rules.event.Reading;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.Box;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A probe that suddenly sends mm where cm were declared reads ten times what the vessel holds. */
final class ImpossibleLevelTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private final Engine engine = new Engine(site());
    private Instant at = T;

    @ParameterizedTest
    @ValueSource(doubles = {4100, 736, -36})
    void aLevelOutsideTheVesselIsAFaultOfTheProbeAndNoWater(double levelMm) {
        send(410, 10);
        send(levelMm, 5);
        List<AlarmView> alarms = engine.snapshot().alarms();
        assertEquals(
                List.of(AlarmKind.PROBE_IMPLAUSIBLE),
                alarms.stream().map(AlarmView::kind).toList());
        assertTrue(
                alarms.get(0).message().contains("outside the vessel of 700 mm"),
                alarms.get(0).message());
        assertEquals(410, engine.snapshot().probes().get(0).value(), "the last that could be");
    }

    @Test
    void aProbeThatIsALittleOutIsHeard() {
        send(410, 10);
        send(730, 20);
        assertTrue(
                engine.snapshot().alarms().stream().anyMatch(a -> a.kind() == AlarmKind.OVERFLOW_NEAR),
                engine.snapshot().alarms().toString());
    }

    private void send(double levelMm, int times) {
        for (int i = 0; i < times; i++) {
            at = at.plusSeconds(10);
            engine.apply(new ReadingArrived(new Reading("level", at, levelMm)));
            engine.apply(new Tick(at));
        }
    }

    private static Site site() {
        return OneProbeSite.of(
                new Vessel("sump", VesselRole.SUMP, new Box(1200, 800, 700), 650, 650, null),
                new Probe("level", "sump", Quantity.LEVEL, null, Duration.ofSeconds(10)));
    }
}
