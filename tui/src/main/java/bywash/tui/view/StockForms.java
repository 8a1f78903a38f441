package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.husbandry.bacteria.CheckItem;
import bywash.rules.husbandry.bacteria.CheckItem.Answer;
import bywash.rules.husbandry.season.FishlessStatus;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.Density;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.site.Vessel;
import bywash.rules.text.Names;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Checks of the forms on fish that come, go and move, and the entries they come to. */
public final class StockForms {
    private static final double LARGEST_LOSS = 0.2;

    private StockForms() {}

    /** Fields: cohort, species, count, mean mass, vessel, when. */
    public static FormCheck fishIn(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        String cohort = in.name(0, "Cohort");
        String species = in.choice(1);
        int count = in.count(2, "Count");
        double massG = in.mass(3, "Mass of one");
        String vessel = in.choice(4);
        Instant at = in.when(5);
        if (!in.good()) {
            return in.open();
        }
        density(in, species, vessel, count * massG);
        FishIn entry = new FishIn(at, cohort, species, count, massG, vessel);
        String done = count + " " + Names.species(species) + " entered as cohort " + cohort + ".";
        if (frame.snapshot().stocking() == Stocking.FISH) {
            return in.done(done, entry);
        }
        notReady(in);
        StockingChange change = new StockingChange(at, Stocking.FISH, species);
        return in.done(done + " The bands are those for fish again.", change, entry);
    }

    /** The tank's load after it against the species' guide. */
    private static void density(FormReader in, String species, String vesselId, double moreG) {
        Frame frame = in.frame();
        Vessel tank = frame.snapshot().site().vessel(vesselId).orElse(null);
        Species known = SpeciesTable.find(frame.snapshot().site(), species).orElse(null);
        if (tank == null || known == null || !(tank.volumeL() > 0)) {
            return;
        }
        SeasonStatus season = frame.snapshot().season();
        double there = season == null
                ? 0
                : season.cohorts().stream()
                        .filter(c -> c.vessel().equals(vesselId))
                        .mapToDouble(c -> c.biomass().likelyG())
                        .sum();
        double kgM3 = (there + moreG) / tank.volumeL();
        double guide = known.most(Need.DENSITY);
        if (kgM3 > guide) {
            in.warn(vesselId + " would carry " + in.units().density(kgM3) + ", over the guide of "
                    + in.units().density(guide) + ".");
        }
    }

    private static void notReady(FormReader in) {
        SeasonStatus season = in.frame().snapshot().season();
        FishlessStatus fishless = season == null ? null : season.fishless();
        if (fishless == null || fishless.ready()) {
            return;
        }
        List<String> open = new ArrayList<>();
        for (CheckItem item : fishless.checklist()) {
            if (item.answer() == Answer.NO || item.answer() == Answer.NOT_KNOWN) {
                open.add(item.what() + " " + item.answer().word());
            }
        }
        in.warn("The way back to fish is not all clear (page f): " + String.join(", ", open) + ".");
    }

    /** Fields: cohort, count, cause, when. */
    public static FormCheck lost(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        CohortStatus cohort = in.cohort(0).orElse(null);
        if (cohort == null) {
            return in.open();
        }
        int count = in.count(1, "Lost");
        String cause = in.words(2, "Cause");
        Instant at = in.when(3);
        if (in.good() && count > LARGEST_LOSS * cohort.count()) {
            in.warn("That is " + Math.round(100.0 * count / Math.max(1, cohort.count()))
                    + " % of the cohort. Look at oxygen, ammonia and chlorine now, and take the dead out.");
        }
        return in.done(count + " lost from " + cohort.id() + " entered.", new FishLoss(at, cohort.id(), count, cause));
    }

    /** Fields: cohort, count, vessel, into, when. */
    public static FormCheck moved(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        CohortStatus cohort = in.cohort(0).orElse(null);
        if (cohort == null) {
            return in.open();
        }
        int count = in.count(1, "Count");
        String vessel = in.choice(2);
        boolean away = vessel.equals(FishMove.AWAY);
        String into = in.blank(3) || away ? null : in.name(3, "Into cohort");
        Instant at = in.when(4);
        return in.done(
                count + " of " + cohort.id() + " moved to " + vessel + ".",
                new FishMove(at, cohort.id(), count, vessel, into));
    }

    /** Fields: stocking, species to bring back, when. */
    public static FormCheck stocking(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        Stocking stocking = in.choice(0).equals(Stocking.FISH.word()) ? Stocking.FISH : Stocking.FISHLESS;
        Instant at = in.when(2);
        OperatorEntry entry = new StockingChange(at, stocking, in.choice(1));
        in.warn(Doubts.of(frame, entry));
        if (stocking == Stocking.FISH && frame.snapshot().stocking() == Stocking.FISHLESS) {
            notReady(in);
        }
        String done = stocking == Stocking.FISH
                ? "The bands are those for fish."
                : "The bands are the plants'; page f has the bacteria's meal and the way back.";
        return in.done(done, entry);
    }

    /** The load of a tank in words, for a hint; empty where it is not known. */
    public static String density(Frame frame, String vessel) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? ""
                : season.cohorts().stream()
                        .filter(c -> c.vessel().equals(vessel) && c.density() != null)
                        .findFirst()
                        .map(c -> load(frame, c.density()))
                        .orElse("");
    }

    private static String load(Frame frame, @org.jspecify.annotations.Nullable Density density) {
        return density == null
                ? ""
                : String.format(
                        Locale.ROOT, "carries %s now", StockUnits.of(frame).density(density.kgM3()));
    }
}
