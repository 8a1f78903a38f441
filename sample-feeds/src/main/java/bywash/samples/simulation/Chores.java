package bywash.samples.simulation;

import bywash.samples.simulation.Action.FillReserve;
import bywash.samples.simulation.Action.PumpOff;
import bywash.samples.simulation.Action.TopUp;
import java.util.ArrayList;
import java.util.List;

/** What a grower does in quiet weeks: a top-up a day, a batch a week, a pump that stands now and then. */
public final class Chores {
    private static final double DAY_MIN = 1440;
    private static final double TOP_UP_L_MIN = 4;
    private static final double FILL_L_MIN = 9;

    private Chores() {}

    /**
     * From the second day on: each day at 9:00 a declared top-up of what evaporated, each seventh day at 15:00 the
     * reserve filled with mains water, each third day from 13:00 the pump off for 10 to 40 min.
     */
    public static List<Action> quiet(SiteModel model, int days) {
        List<Action> actions = new ArrayList<>();
        double litres = model.evaporationLPerH() * 24;
        for (int day = 1; day < days; day++) {
            double midnight = day * DAY_MIN;
            actions.add(new TopUp(midnight + 9 * 60, litres / TOP_UP_L_MIN, TOP_UP_L_MIN, 0, 0));
            if (day % 7 == 6) {
                double at = midnight + 15 * 60;
                actions.add(new FillReserve(at, at + litres * 7 / FILL_L_MIN, FILL_L_MIN, 0.9));
            }
            if (day % 3 == 1) {
                double at = midnight + 13 * 60;
                actions.add(new PumpOff(at, at + 10 * (1 + day % 4)));
            }
        }
        return actions;
    }
}
