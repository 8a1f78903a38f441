package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.samples.SampleRecordings;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.SimulatedSite;
import bywash.samples.simulation.SiteModel;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A valve opens eight minutes after a restart: what the watch learned before must be there, or nothing would be found. */
class DetectionAfterRestartTest {
    private static final int STOP_MIN = 540;
    private static final int START_MIN = 542;
    private static final int VALVE_MIN = 548;
    private static final int MOST_MIN = 40;
    private static final double RATE_L_MIN = 4;
    /** A restart may cost so much: what was in the making is looked at anew. */
    private static final double MAY_COST_MIN = 3;

    @TempDir
    Path dir;

    private Instant now = SampleRecordings.start();

    private Station open(String name, List<AlarmTransition> raised) throws Exception {
        Station station = Station.open(Larkfield.site(), dir.resolve(name), () -> now);
        station.outlets().add((t, line) -> {
            if (t.kind() == AlarmKind.UNPLANNED_INFLOW && t.state() == AlarmState.UNACKNOWLEDGED) {
                raised.add(t);
            }
        });
        return station;
    }

    /** Minutes from the valve to the alarm; infinite where there is none. */
    private double delayMin(long seed, boolean restarted) throws Exception {
        List<Action> valve = List.of(new Action.InflowIntoSump(VALVE_MIN, VALVE_MIN + MOST_MIN, RATE_L_MIN, 0.9));
        Instant start = SampleRecordings.start();
        SimulatedSite site =
                new SimulatedSite(SiteModel.larkfield(), valve, start, Duration.ofMinutes(VALVE_MIN + MOST_MIN), seed);
        List<AlarmTransition> raised = new ArrayList<>();
        now = start;
        String name = "watch-" + seed + restarted;
        Station station = open(name, raised);
        boolean running = true;
        for (RecordedLine line = site.next(); line != null && raised.isEmpty(); line = site.next()) {
            now = line.time();
            double minute = Duration.between(start, now).toMillis() / 60_000.0;
            if (restarted && running && minute >= STOP_MIN && minute < START_MIN) {
                station.watch().end();
                running = false;
            } else if (!running && minute >= START_MIN) {
                station = open(name, raised);
                running = true;
            }
            if (running && line instanceof Message message) {
                station.watch().step(List.of(message));
            }
        }
        station.watch().end();
        if (raised.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        assertEquals("sump", raised.get(0).subject());
        return Duration.between(start, raised.get(0).at()).toMillis() / 60_000.0 - VALVE_MIN;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aValveThatOpensSoonAfterARestartIsFoundAsSoonAsWithoutOne(long seed) throws Exception {
        double without = delayMin(seed, false);
        double with = delayMin(seed, true);
        assertTrue(without > 0 && with > 0, "before the valve opened: " + without + ", " + with);
        assertTrue(with <= without + MAY_COST_MIN, "minutes without a restart " + without + ", with one " + with);
    }
}
