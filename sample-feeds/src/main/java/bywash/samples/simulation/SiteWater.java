package bywash.samples.simulation;

import bywash.samples.simulation.Action.FillReserve;
import bywash.samples.simulation.Action.InflowIntoSump;
import bywash.samples.simulation.Action.LeakFromSump;
import bywash.samples.simulation.Action.OpenLine;
import bywash.samples.simulation.Action.RainIntoSump;
import bywash.samples.simulation.Action.TopUp;
import bywash.samples.simulation.WaterQuality.Added;
import java.util.List;
import java.util.SplittableRandom;

/** The water of the invented site, one second a step: what moves between vessels, comes in, leaves, and is dissolved. */
final class SiteWater {
    private static final double STEP_MIN = 1.0 / 60;
    private static final double FISH_TANK_L = 1500;
    private static final double PIPES_L = 45;
    private static final double MAINS_C = 11;
    private static final double RAIN_C = 14;
    private static final double RESERVE_C = 18;

    private final SiteModel model;
    private final SplittableRandom random;
    private final Bed[] beds;
    private final Reserve reserve = new Reserve();
    private final WaterQuality quality;
    private double sumpL;
    private double pipesL = PIPES_L;
    private double netInL;
    private double spilledL;
    private double enteredL;
    private long second;

    SiteWater(SiteModel model, SplittableRandom random) {
        this.model = model;
        this.random = random;
        this.quality = new WaterQuality(model.chlorineLossPerH());
        this.beds = new Bed[model.beds().count()];
        for (int i = 0; i < beds.length; i++) {
            beds[i] = Bed.of(model.beds(), i, random);
        }
        this.sumpL = model.sumpFullL() * 0.52 + 40 * beds.length - bedsL();
    }

    double sumpMm() {
        return sumpL / model.sumpM2();
    }

    double reserveMm() {
        return reserve.volumeL() / Reserve.AREA_M2;
    }

    WaterQuality quality() {
        return quality;
    }

    private double bedsL() {
        double held = 0;
        for (Bed bed : beds) {
            held += bed.heldL();
        }
        return held;
    }

    private double systemL() {
        return sumpL + FISH_TANK_L + bedsL() + pipesL;
    }

    Truth truth() {
        return new Truth(
                second,
                sumpL,
                reserve.volumeL(),
                bedsL(),
                pipesL,
                systemL(),
                netInL,
                enteredL / STEP_MIN,
                quality.residualUgL(systemL()),
                reserve.residualMgL(),
                spilledL);
    }

    void step(List<Action> active, boolean pumpOn) {
        double tMin = second / 60.0;
        enteredL = 0;
        double target = pumpOn ? PIPES_L : 0;
        double toPipes = (target - pipesL) * (1 - StrictMath.exp(-STEP_MIN / 1.5));
        pipesL += toPipes;
        sumpL -= toPipes;
        double day = 2 * StrictMath.PI * tMin / 1440;
        double flowShare = pumpOn ? 1 + model.beds().flowSwing() * StrictMath.sin(day / 3.7) : 0;
        for (Bed bed : beds) {
            sumpL += bed.step(STEP_MIN, flowShare, random);
        }
        double evaporation = model.evaporationLPerH() / 60 * STEP_MIN * (1 + 0.8 * StrictMath.sin(day));
        sumpL -= evaporation;
        netInL -= evaporation;
        for (Action action : active) {
            transfer(action, tMin);
        }
        spill(StrictMath.max(0, sumpL - model.sumpFullL()));
        reserve.step(STEP_MIN);
        quality.step(STEP_MIN, systemL(), pumpOn, tMin);
        second++;
    }

    private void spill(double litres) {
        quality.remove(litres, systemL());
        sumpL -= litres;
        netInL -= litres;
        spilledL += litres;
    }

    private void transfer(Action action, double tMin) {
        if (tMin < action.atMin() || tMin >= action.untilMin()) {
            return;
        }
        switch (action.kind()) {
            case INFLOW_INTO_SUMP -> {
                InflowIntoSump in = (InflowIntoSump) action;
                double litres = in.rateLMin() * STEP_MIN;
                fromOutside(new Added(litres, litres * in.chlorineMgL(), MAINS_C, litres, 0));
            }
            case RAIN_INTO_SUMP -> {
                double litres = ((RainIntoSump) action).rateLMin() * STEP_MIN;
                fromOutside(new Added(litres, 0, RAIN_C, 0, litres));
            }
            case FILL_RESERVE -> fill((FillReserve) action);
            case TOP_UP -> {
                TopUp up = (TopUp) action;
                release(tMin < up.endMin() ? up.rateLMin() : up.dribbleLMin());
            }
            case OPEN_LINE -> release(((OpenLine) action).rateLMin());
            case LEAK_FROM_SUMP -> leak((LeakFromSump) action);
            case PUMP_OFF, LEVEL_SILENT, LEVEL_STUCK, TEST_RESERVE -> {
                // no water
            }
        }
    }

    private void fill(FillReserve fill) {
        double litres = fill.rateLMin() * STEP_MIN;
        double over = reserve.fill(litres, fill.chlorineMgL());
        netInL += litres - over;
        spilledL += over;
    }

    private void leak(LeakFromSump leak) {
        double litres = StrictMath.min(sumpL, leak.rateLMin() * STEP_MIN);
        quality.remove(litres, systemL());
        sumpL -= litres;
        netInL -= litres;
        enteredL -= litres;
    }

    private void fromOutside(Added in) {
        enter(in);
        netInL += in.litres();
    }

    private void release(double rateLMin) {
        double residual = reserve.residualMgL();
        double litres = reserve.release(rateLMin * STEP_MIN);
        enter(new Added(litres, litres * residual, RESERVE_C, litres, 0));
    }

    private void enter(Added in) {
        sumpL += in.litres();
        enteredL += in.litres();
        quality.add(in, systemL());
    }
}
