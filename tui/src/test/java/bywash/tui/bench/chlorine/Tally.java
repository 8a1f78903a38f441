package bywash.tui.bench.chlorine;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.chlorine.ResidualEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What the trials of one variant come to. */
final class Tally {
    private final String name;
    private final List<Trial.Minute> minutes = new ArrayList<>();
    private final List<Double> leads = new ArrayList<>();
    private final List<List<Trial.Minute>> trials = new ArrayList<>();
    private int risks;
    private int rises;

    Tally(String name) {
        this.name = name;
    }

    void add(Trial trial) {
        trials.add(trial.minutes());
        minutes.addAll(trial.minutes());
        double raised = trial.firstMin(AlarmKind.CHLORINE_RISK);
        double above = trial.trueAboveMin(ResidualEstimate.ACUTE_UG_L);
        risks += Double.isInfinite(raised) ? 0 : 1;
        rises += Double.isInfinite(trial.firstMin(AlarmKind.ORP_RISE)) ? 0 : 1;
        if (!Double.isInfinite(above)) {
            leads.add(above - raised);
        }
    }

    /** The minutes of each trial. */
    List<List<Trial.Minute>> trials() {
        return trials;
    }

    /** Minutes from the warning to the criterion, for each trial that passed it. */
    List<Double> leads() {
        return leads;
    }

    /** Share of all minutes with the truth inside the range, 0 to 1. */
    double inside() {
        return share(minutes);
    }

    /** The same of the minutes with more than 1 ug/L in truth. */
    double wetInside() {
        return share(minutes.stream().filter(m -> m.trueUgL() > 1).toList());
    }

    /** Share of the same minutes with the truth not above the range. */
    double notAbove() {
        List<Trial.Minute> wet = minutes.stream().filter(m -> m.trueUgL() > 1).toList();
        long held = wet.stream()
                .filter(m -> m.trueUgL() <= m.estimate().highUgL() + 0.5)
                .count();
        return wet.isEmpty() ? 1 : held / (double) wet.size();
    }

    static double share(List<Trial.Minute> of) {
        return of.isEmpty() ? 1 : of.stream().filter(Trial.Minute::inside).count() / (double) of.size();
    }

    private double batchInside() {
        return minutes.stream().filter(Trial.Minute::batchInside).count() / (double) minutes.size();
    }

    String line() {
        return String.format(
                Locale.ROOT,
                "%-12s inside %.1f %% of %d min, %.1f %% of those above 1 ug/L; reserve inside %.1f %%; chlorine-risk in"
                        + " %d, orp-rise in %d of %d; lead min %s",
                name,
                100 * inside(),
                minutes.size(),
                100 * wetInside(),
                100 * batchInside(),
                risks,
                rises,
                trials.size(),
                leads.stream().map(l -> String.format(Locale.ROOT, "%.0f", l)).collect(Collectors.joining(" ")));
    }
}
