package bywash.tui.view;

import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.husbandry.probes.CarePlan;
import bywash.rules.husbandry.probes.ProbeBook;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Probe;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.LabelStrength;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Whether an entry of the season can be booked as it is; the same for forms and for the shell. */
public final class SeasonCheck {
    private SeasonCheck() {}

    /** What is wrong and what would be right, without a full stop; empty where nothing is. */
    public static String problem(Snapshot snapshot, OperatorEntry entry) {
        return switch (entry.kind()) {
            case FISH_IN -> fishIn(snapshot, (FishIn) entry);
            case WEIGH ->
                cohort(snapshot, ((Weigh) entry).cohort(), ((Weigh) entry).all() ? 0 : ((Weigh) entry).count());
            case FISH_LOSS -> cohort(snapshot, ((FishLoss) entry).cohort(), ((FishLoss) entry).count());
            case HARVEST -> cohort(snapshot, ((Harvest) entry).cohort(), ((Harvest) entry).count());
            case FISH_MOVE -> move(snapshot, (FishMove) entry);
            case FEED -> ((Feed) entry).cohort() == null ? "" : cohort(snapshot, ((Feed) entry).cohort(), 0);
            case STOCKING -> stocking(snapshot.site(), (StockingChange) entry);
            case DOSE, BATCH_TREAT, PH_PLAN -> strength(entry);
            case PLANT -> plant(snapshot.site(), (Plant) entry);
            case CROP_HARVEST -> bed(snapshot.site(), ((CropHarvest) entry).vessel());
            case BED -> bed(snapshot.site(), ((BedState) entry).vessel());
            case PROBE_CARE -> probe(snapshot.site(), ((ProbeCare) entry).probe());
            case CALIBRATE -> calibrate(snapshot.site(), (Calibrate) entry);
            case TOP_UP_START, TOP_UP_END, BATCH_FILL, TEST, NOTE, STEP_DONE, WITHDRAW, ACKNOWLEDGE -> "";
            case SHELVE, UNSHELVE, MAINTENANCE_START, MAINTENANCE_END, OUT_OF_SERVICE, RETURN_TO_SERVICE -> "";
        };
    }

    /** The same of a chemical's label alone, which asks nothing of the site. */
    public static String strength(OperatorEntry entry) {
        if (entry instanceof Dose e && !Double.isNaN(e.strengthPercent())) {
            return LabelStrength.problem(e.reagent(), e.strengthPercent());
        }
        if (entry instanceof BatchTreat e && !Double.isNaN(e.strengthPercent())) {
            return LabelStrength.problem(e.treatment(), e.strengthPercent());
        }
        return entry instanceof PhAim e ? LabelStrength.problem(e.reagent(), e.strengthPercent()) : "";
    }

    private static String stocking(Site site, StockingChange entry) {
        return entry.species() == null ? "" : species(site, entry.species());
    }

    private static String plant(Site site, Plant entry) {
        return entry.areaM2() > 0 ? bed(site, entry.vessel()) : "area of plant is 0; give an area above 0 m2";
    }

    private static String calibrate(Site site, Calibrate entry) {
        String probe = probe(site, entry.probe());
        return probe.isEmpty() ? ProbeBook.fault(site, entry) : probe;
    }

    private static List<CohortStatus> cohorts(Snapshot snapshot) {
        SeasonStatus season = snapshot.season();
        return season == null ? List.of() : season.cohorts();
    }

    private static @Nullable CohortStatus find(Snapshot snapshot, String id) {
        return cohorts(snapshot).stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElse(null);
    }

    private static String fishIn(Snapshot snapshot, FishIn in) {
        if (in.count() < 1 || !(in.meanMassG() > 0)) {
            return "fish-in has no fish or no mass; give a count and a mean mass above 0";
        }
        CohortStatus there = find(snapshot, in.cohort());
        if (there != null && !there.species().equals(in.species())) {
            return "cohort " + in.cohort() + " is " + there.species() + "; give the " + in.species() + " another name";
        }
        return species(snapshot.site(), in.species());
    }

    private static String species(Site site, String id) {
        return SpeciesTable.find(site, id).isPresent()
                ? ""
                : "species " + id + " is not known; one of " + SpeciesTable.words(site)
                        + ", or write its bands into the site file";
    }

    private static String cohort(Snapshot snapshot, String id, int atLeast) {
        CohortStatus there = find(snapshot, id);
        if (there == null) {
            String known = cohorts(snapshot).stream().map(CohortStatus::id).collect(Collectors.joining(", "));
            return "cohort " + id + " is not on record; "
                    + (known.isEmpty() ? "enter fish-in first" : "it has " + known);
        }
        return there.count() < atLeast
                ? "cohort " + id + " has " + there.count() + " fish, not " + atLeast
                        + "; type a count that it has, or weigh all to put the count right"
                : "";
    }

    private static String move(Snapshot snapshot, FishMove move) {
        String from = cohort(snapshot, move.cohort(), move.count());
        CohortStatus there = find(snapshot, move.cohort());
        if (!from.isEmpty() || there == null || move.vessel().equals(FishMove.AWAY)) {
            return from;
        }
        String into = move.into();
        if (into == null || into.equals(move.cohort())) {
            return move.count() == there.count()
                    ? ""
                    : "only " + move.count() + " of " + there.count()
                            + " move; name the cohort that they become or join";
        }
        CohortStatus joined = find(snapshot, into);
        return joined == null || joined.species().equals(there.species())
                ? ""
                : "cohort " + into + " is " + joined.species() + "; name one of " + there.species() + ", or a new one";
    }

    private static String bed(Site site, String id) {
        List<String> beds =
                site.vessels(VesselRole.GROW_BED).stream().map(Vessel::id).toList();
        return beds.contains(id)
                ? ""
                : "vessel " + id + " is no grow-bed of the site file; "
                        + (beds.isEmpty() ? "it has none" : "it has " + String.join(", ", beds));
    }

    private static String probe(Site site, String id) {
        List<String> known = site.probes().stream()
                .filter(p -> CarePlan.of(p.quantity()) != null)
                .map(Probe::id)
                .toList();
        return known.contains(id)
                ? ""
                : "probe " + id + " is none that is calibrated; "
                        + (known.isEmpty() ? "the site has none" : "it has " + String.join(", ", known));
    }
}
