package bywash.tui.view;

import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.Weighing;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Names;
import java.util.List;
import java.util.Optional;

/** The cohorts with fish, to choose from in forms. */
public final class Cohorts {
    private Cohorts() {}

    /** In the order they came. */
    public static List<String> ids(Frame frame) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? List.of()
                : season.cohorts().stream()
                        .filter(c -> c.count() > 0)
                        .map(CohortStatus::id)
                        .toList();
    }

    static Optional<CohortStatus> find(Frame frame, String id) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? Optional.empty()
                : season.cohorts().stream().filter(c -> c.id().equals(id)).findFirst();
    }

    /** What is in it, such as {@code 74 nile-tilapia in fish-tank, 173 g each}; empty where there is none. */
    public static String now(Frame frame, String id) {
        return find(frame, id)
                .map(c -> c.count() + " " + Names.species(c.species()) + " in " + c.vessel() + ", "
                        + StockUnits.of(frame).mass(c.mean().likelyG()) + " each")
                .orElse("");
    }

    /** How it was weighed last. */
    public static String weighed(Frame frame, String id) {
        List<Weighing> all = find(frame, id).map(CohortStatus::weighings).orElse(List.of());
        if (all.isEmpty()) {
            return "not weighed yet";
        }
        Weighing last = all.get(all.size() - 1);
        return "last " + last.counted() + " at " + StockUnits.of(frame).mass(last.meanG()) + ", "
                + Words.shortSpan(last.at(), frame.at()) + " ago";
    }

    /** Vessels that fish live in; all of the loop where none is a fish tank. */
    public static List<String> tanks(Frame frame) {
        List<String> tanks = frame.snapshot().site().vessels(VesselRole.FISH_TANK).stream()
                .map(Vessel::id)
                .toList();
        return tanks.isEmpty()
                ? frame.snapshot().site().vessels().stream().map(Vessel::id).toList()
                : tanks;
    }
}
