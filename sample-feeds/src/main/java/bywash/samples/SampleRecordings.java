package bywash.samples;

import bywash.samples.simulation.Action;
import bywash.samples.simulation.Action.FillReserve;
import bywash.samples.simulation.Action.InflowIntoSump;
import bywash.samples.simulation.Action.LevelSilent;
import bywash.samples.simulation.Action.PumpOff;
import bywash.samples.simulation.Action.RainIntoSump;
import bywash.samples.simulation.Action.TestReserve;
import bywash.samples.simulation.Action.TopUp;
import bywash.samples.simulation.SimulatedSite;
import bywash.samples.simulation.SiteModel;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** The labelled recordings: what happens in each, from which seed. Minutes count from the start. */
public enum SampleRecordings {
    QUIET_SIPHONS(480, 11, List.of()),
    VALVE_OPEN(300, 12, List.of(new FillReserve(180, 270, 3, 0.9), new InflowIntoSump(210, 245, 8, 0.9))),
    HOSE_IN_SUMP(330, 13, List.of(new InflowIntoSump(240, 300, 4, 0.9))),
    PUMP_STOP_RESTART(360, 14, List.of(new PumpOff(200, 245))),
    DECLARED_TOP_UP(300, 15, List.of(new TestReserve(170, 0.0), new TopUp(200, 20, 6, 0, 0))),
    TOP_UP_DRIBBLING(330, 16, List.of(new TestReserve(170, 0.0), new TopUp(200, 15, 6, 1.5, 290))),
    PROBE_SILENT(280, 17, List.of(new LevelSilent(200, 240))),
    RAIN(330, 18, List.of(new RainIntoSump(240, 300, 2)));

    private static final Instant START = Instant.parse("2026-05-04T04:00:00Z");

    private final int minutes;
    private final long seed;
    private final List<Action> actions;

    SampleRecordings(int minutes, long seed, List<Action> actions) {
        this.minutes = minutes;
        this.seed = seed;
        this.actions = actions;
    }

    /** File name in recordings/. */
    public String fileName() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-') + ".jsonl.gz";
    }

    /** The simulation that makes it, from its first line. */
    public SimulatedSite simulation() {
        return new SimulatedSite(SiteModel.larkfield(), actions, START, Duration.ofMinutes(minutes), seed);
    }

    /** First moment. */
    public static Instant start() {
        return START;
    }
}
