package bywash.samples.simulation;

import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.Action.FillReserve;
import bywash.samples.simulation.Action.TestReserve;
import bywash.samples.simulation.Action.TopUp;
import bywash.samples.simulation.LevelProbe.Fate;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Runs the invented site, one second a step. The same model, actions and seed tell the same, always. */
public final class SiteRun {
    private final SiteModel model;
    private final List<Action> actions;
    private final List<Action> active = new ArrayList<>();
    private final Instant start;
    private final SiteSink sink;
    private final SplittableRandom random;
    private final SiteWater water;
    private final LevelProbe sump;
    private final LevelProbe reserve;
    private final SiteSink.WaterSample sample;
    private long second;

    public SiteRun(SiteModel model, List<Action> actions, Instant start, long seed, SiteSink sink) {
        this.model = model;
        this.actions = List.copyOf(actions);
        this.start = start;
        this.sink = sink;
        this.random = new SplittableRandom(seed);
        this.water = new SiteWater(model, random.split());
        this.sump = new LevelProbe(model.probe(), model.probe().driftMmPerDay(), random.split());
        this.reserve = new LevelProbe(model.probe(), 0, random.split());
        this.sample = new WaterSampleOf(water.quality(), random);
    }

    /** What is really so now. */
    public Truth truth() {
        return water.truth();
    }

    /** One second: grower, water, probes. */
    public void step() {
        double tMin = second / 60.0;
        if (second % 60 == 0) {
            active.clear();
            actions.stream()
                    .filter(a -> a.atMin() < tMin + 1 && a.untilMin() >= tMin)
                    .forEach(active::add);
        }
        Instant at = start.plusSeconds(second);
        for (Action action : active) {
            entries(action, at);
        }
        boolean pumpOn = none(Action.Kind.PUMP_OFF, tMin);
        water.step(active, pumpOn);
        levels(tMin, at);
        if (second % 30 == 11) {
            sink.quality(at, sample);
            if (model.pumpProbe()) {
                sink.pump(at, pumpOn);
            }
        }
        second++;
    }

    private void entries(Action action, Instant at) {
        switch (action.kind()) {
            case TOP_UP -> {
                TopUp up = (TopUp) action;
                if (now(up.atMin())) {
                    Duration length = Duration.ofSeconds(StrictMath.round(up.minutes() * 60));
                    double litres = up.minutes() * up.rateLMin();
                    sink.entry(new OperatorEntry.TopUpStart(at, "sump", "reserve", litres, length));
                } else if (now(up.endMin())) {
                    sink.entry(new OperatorEntry.TopUpEnd(at, "sump"));
                }
            }
            case TEST_RESERVE -> {
                if (now(action.atMin())) {
                    double residual = ((TestReserve) action).totalChlorineMgL();
                    sink.entry(new OperatorEntry.WaterTest(at, "reserve", "total-chlorine", residual));
                }
            }
            case FILL_RESERVE -> {
                if (now(action.atMin())) {
                    double litres = (action.untilMin() - action.atMin()) * ((FillReserve) action).rateLMin();
                    sink.entry(new OperatorEntry.BatchFill(at, "reserve", litres));
                }
            }
            case INFLOW_INTO_SUMP, RAIN_INTO_SUMP, LEAK_FROM_SUMP, OPEN_LINE -> {
                // nobody meant it
            }
            case PUMP_OFF, LEVEL_SILENT, LEVEL_STUCK -> {
                // nobody enters it
            }
        }
    }

    private boolean now(double minute) {
        return second == StrictMath.round(minute * 60);
    }

    private boolean none(Action.Kind kind, double tMin) {
        for (Action a : active) {
            if (a.kind() == kind && tMin >= a.atMin() && tMin < a.untilMin()) {
                return false;
            }
        }
        return true;
    }

    private void levels(double tMin, Instant at) {
        int every = model.probe().everyS();
        if (second % every == 3 % every && none(Action.Kind.LEVEL_SILENT, tMin)) {
            boolean stuck = !none(Action.Kind.LEVEL_STUCK, tMin);
            tell("sump", at, sump.fate(), sump.read(water.sumpMm(), second, stuck));
        }
        if (second % every == 5 % every) {
            tell("reserve", at, reserve.fate(), reserve.read(water.reserveMm(), second, false));
        }
    }

    private void tell(String vessel, Instant at, Fate fate, double mm) {
        switch (fate) {
            case LOST -> {}
            case SENT -> sink.level(vessel, at, mm);
            case TWICE -> {
                sink.level(vessel, at, mm);
                sink.level(vessel, at, mm);
            }
        }
    }

    private record WaterSampleOf(WaterQuality quality, SplittableRandom random) implements SiteSink.WaterSample {
        @Override
        public String senml() {
            return quality.senml(random);
        }

        @Override
        public String oxygen() {
            return quality.oxygen(random);
        }

        @Override
        public String orp() {
            return quality.orp(random);
        }
    }
}
