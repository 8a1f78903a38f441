package bywash.samples.simulation;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Entry;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.Action.FillReserve;
import bywash.samples.simulation.Action.InflowIntoSump;
import bywash.samples.simulation.Action.LevelSilent;
import bywash.samples.simulation.Action.LevelStuck;
import bywash.samples.simulation.Action.PumpOff;
import bywash.samples.simulation.Action.TestReserve;
import bywash.samples.simulation.Action.TopUp;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** The invented site, one second a step. The same model, actions and seed give the same lines, always. */
public final class SimulatedSite {
    private static final double STEP_MIN = 1.0 / 60;
    private static final double SUMP_M2 = 0.96;
    private static final double SUMP_FULL_L = 652.8;
    private static final double RESERVE_M2 = Math.PI * 0.55 * 0.55;
    private static final double FISH_TANK_L = 1500;
    private static final double PIPES_L = 45;

    private final SiteModel model;
    private final List<Action> actions;
    private final Instant start;
    private final long seconds;
    private final SplittableRandom random;
    private final Bed[] beds;
    private final WaterQuality water = new WaterQuality();
    private final ArrayDeque<RecordedLine> ready = new ArrayDeque<>();
    private double sumpL = 330;
    private double reserveL = 700;
    private double pipesL;
    private double inflowL;
    private double stuckCm = Double.NaN;
    private long second;

    public SimulatedSite(SiteModel model, List<Action> actions, Instant start, Duration length, long seed) {
        this.model = model;
        this.actions = List.copyOf(actions);
        this.start = start;
        this.seconds = length.getSeconds();
        this.random = new SplittableRandom(seed);
        this.beds = new Bed[model.beds()];
        for (int i = 0; i < beds.length; i++) {
            double trip = 62 + 31.0 * i / Math.max(1, beds.length - 1);
            double fill = trip / (model.periodMin() * (0.85 + 0.17 * i));
            beds[i] = new Bed(fill, trip, model.jitter(), 26 + 3 * i, random.nextDouble());
        }
    }

    /** The next line; null at the end. */
    public @Nullable RecordedLine next() {
        while (ready.isEmpty() && second < seconds) {
            step();
            second++;
        }
        return ready.poll();
    }

    /** Litres in all vessels but the fish tank: for tests of conservation. */
    double heldL() {
        double held = sumpL + reserveL + pipesL;
        for (Bed bed : beds) {
            held += bed.heldL();
        }
        return held;
    }

    /** Litres that came in from outside so far, less what evaporated and spilled. */
    double netInflowL() {
        return inflowL;
    }

    /** True residual of the system, ug/L. */
    public double residualUgL() {
        return water.residualUgL(systemL());
    }

    private double systemL() {
        double held = sumpL + FISH_TANK_L;
        for (Bed bed : beds) {
            held += bed.heldL();
        }
        return held;
    }

    private void step() {
        double t = second / 60.0;
        Instant at = start.plusSeconds(second);
        entries(t, at);
        boolean pumpOn = pumpOn(t);
        double target = pumpOn ? 0 : PIPES_L;
        double flow = (target - pipesGiven()) * (1 - Math.exp(-STEP_MIN / 1.5));
        pipesL -= flow;
        sumpL += flow;
        for (Bed bed : beds) {
            sumpL += bed.step(STEP_MIN, pumpOn, random);
        }
        double evaporation = model.evaporationLPerH() / 60 * STEP_MIN * (1 + 0.8 * Math.sin(2 * Math.PI * t / 1440));
        sumpL -= evaporation;
        inflowL -= evaporation;
        double chlorineMg = 0;
        double mainsL = 0;
        for (Action action : actions) {
            double litres = transfer(action, t);
            if (action instanceof InflowIntoSump in && litres > 0) {
                chlorineMg += litres * in.chlorineMgL();
                mainsL += litres;
            }
        }
        double spill = Math.max(0, sumpL - SUMP_FULL_L - 40);
        sumpL -= spill;
        inflowL -= spill;
        water.step(STEP_MIN, chlorineMg, mainsL, systemL(), pumpOn, t, random);
        publish(t, at, pumpOn);
    }

    private double pipesGiven() {
        return -pipesL;
    }

    private double transfer(Action action, double t) {
        if (action instanceof InflowIntoSump in && t >= in.atMin() && t < in.untilMin()) {
            double litres = in.rateLMin() * STEP_MIN;
            sumpL += litres;
            inflowL += litres;
            return litres;
        }
        if (action instanceof FillReserve fill && t >= fill.atMin() && t < fill.untilMin()) {
            double litres = fill.rateLMin() * STEP_MIN;
            reserveL += litres;
            inflowL += litres;
            return litres;
        }
        if (action instanceof TopUp up && t >= up.atMin()) {
            double end = up.atMin() + up.minutes();
            double rate = t < end ? up.rateLMin() : t < up.dribbleUntilMin() ? up.dribbleLMin() : 0;
            double litres = Math.min(reserveL, rate * STEP_MIN);
            reserveL -= litres;
            sumpL += litres;
            return litres;
        }
        return 0;
    }

    private void entries(double t, Instant at) {
        for (Action action : actions) {
            if (action instanceof TopUp up) {
                if (second == Math.round(up.atMin() * 60)) {
                    ready.add(new Entry(new OperatorEntry.TopUpStart(
                            at,
                            "sump",
                            "reserve",
                            up.minutes() * up.rateLMin(),
                            Duration.ofSeconds(Math.round(up.minutes() * 60)))));
                }
                if (second == Math.round((up.atMin() + up.minutes()) * 60)) {
                    ready.add(new Entry(new OperatorEntry.TopUpEnd(at, "sump")));
                }
            } else if (action instanceof TestReserve test && second == Math.round(test.atMin() * 60)) {
                ready.add(new Entry(
                        new OperatorEntry.WaterTest(at, "reserve", "total-chlorine", test.totalChlorineMgL())));
            } else if (action instanceof FillReserve fill && second == Math.round(fill.atMin() * 60)) {
                double litres = (fill.untilMin() - fill.atMin()) * fill.rateLMin();
                ready.add(new Entry(new OperatorEntry.BatchFill(at, "reserve", litres)));
            }
        }
    }

    private boolean pumpOn(double t) {
        return actions.stream().noneMatch(a -> a instanceof PumpOff off && t >= off.atMin() && t < off.untilMin());
    }

    private void publish(double t, Instant at, boolean pumpOn) {
        int every = model.everyS();
        if (second % every == 3 % every && !silent(t)) {
            message(at, "larkfield/sump/level", level(sumpL / SUMP_M2 / 10, stuck(t)));
        }
        if (second % every == 5 % every) {
            message(at, "larkfield/reserve/level", level(reserveL / RESERVE_M2 / 10, false));
        }
        if (second % 30 == 11) {
            message(at, "larkfield/fish", water.senml(random));
            message(at, "larkfield/do", water.oxygen(t, random));
            message(at, "larkfield/orp", water.orp(random));
            message(at, "larkfield/pump", pumpOn ? "on" : "off");
        }
    }

    private String level(double cm, boolean stuck) {
        double noisy = cm + model.noiseMm() / 10 * random.nextGaussian();
        if (stuck) {
            stuckCm = Double.isNaN(stuckCm) ? noisy : stuckCm;
            noisy = stuckCm;
        }
        return String.format(Locale.ROOT, "%.2f", Math.max(0, noisy));
    }

    private boolean silent(double t) {
        return actions.stream().anyMatch(a -> a instanceof LevelSilent s && t >= s.atMin() && t < s.untilMin());
    }

    private boolean stuck(double t) {
        return actions.stream().anyMatch(a -> a instanceof LevelStuck s && t >= s.atMin() && t < s.untilMin());
    }

    private void message(Instant at, String topic, String payload) {
        ready.add(new Message(at, topic, payload.getBytes(StandardCharsets.UTF_8), 0, false));
    }
}
