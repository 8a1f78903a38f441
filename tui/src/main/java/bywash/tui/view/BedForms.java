package bywash.tui.view;

import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.BedStatus.Stand;
import bywash.rules.husbandry.plants.Crop;
import bywash.rules.husbandry.plants.NitrogenBalance;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Names;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Checks of the forms on beds, and the entries they come to. */
public final class BedForms {
    /** A bed out of the loop. */
    public static final String OFF = "taken off";
    /** A bed in the loop. */
    public static final String ON = "put back";

    private static final double MOST_M2 = 10_000;
    private static final double MOST_G_PER_M2 = 20_000;

    private BedForms() {}

    public static List<String> beds(Frame frame) {
        return frame.snapshot().site().vessels(VesselRole.GROW_BED).stream()
                .map(Vessel::id)
                .toList();
    }

    public static List<String> crops() {
        return Stream.of(Crop.values()).map(Crop::word).toList();
    }

    private static Optional<BedStatus> bed(Frame frame, String id) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? Optional.empty()
                : season.beds().stream().filter(b -> b.vessel().equals(id)).findFirst();
    }

    /** What grows in it, for a hint. */
    public static String now(Frame frame, String id) {
        return bed(frame, id)
                .map(b -> b.on() ? stands(frame, b) : "taken off; " + stands(frame, b))
                .orElse("");
    }

    private static String stands(Frame frame, BedStatus bed) {
        return bed.stands().isEmpty()
                ? "nothing planted on record"
                : bed.stands().stream()
                        .map(s -> Names.words(s.word()) + " "
                                + StockUnits.of(frame).area(s.areaM2()))
                        .collect(Collectors.joining(", "));
    }

    /** Fields: bed, crop, area, when. */
    public static FormCheck plant(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        if (in.blank(0)) {
            in.problem("The site has no grow-bed.");
            return in.open();
        }
        double area = area(in, filled, 2, "Area", false);
        Plant entry = new Plant(in.when(3), in.choice(0), in.choice(1), area);
        if (in.good()) {
            in.warn(Doubts.of(frame, entry));
        }
        return in.done(in.choice(0) + ": " + in.units().area(area) + " of " + in.choice(1) + " planted.", entry);
    }

    private static double area(FormReader in, Filled filled, int field, String label, boolean open) {
        if (open && in.blank(field)) {
            return 0;
        }
        double area = in.units().squareMetres(filled.number(field));
        if (!(area > 0 && area <= MOST_M2)) {
            in.problem(label + ": type " + in.units().areaUnit() + ", above 0" + (open ? ", or leave it open." : "."));
        }
        return area;
    }

    /** Fields: bed, crop, mass, area cleared, when. */
    public static FormCheck harvest(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        if (in.blank(0)) {
            in.problem("The site has no grow-bed.");
            return in.open();
        }
        double massG = in.mass(2, "Harvest");
        double cleared = area(in, filled, 3, "Cleared", true);
        Instant at = in.when(4);
        if (in.good()) {
            doubts(in, massG, cleared);
        }
        return in.done(
                in.units().bulk(massG) + " of " + in.choice(1) + " entered.",
                new CropHarvest(at, in.choice(0), in.choice(1), massG, cleared));
    }

    private static void doubts(FormReader in, double massG, double clearedM2) {
        BedStatus bed = bed(in.frame(), in.choice(0)).orElse(null);
        if (bed == null) {
            return;
        }
        double stands = bed.stands().stream()
                .filter(s -> s.word().equals(in.choice(1)))
                .mapToDouble(Stand::areaM2)
                .sum();
        if (stands == 0) {
            in.warn("No " + in.choice(1) + " is on record in " + bed.vessel() + "; is the crop right?");
        } else if (clearedM2 > stands + 1e-6) {
            in.warn("Only " + in.units().area(stands) + " of " + in.choice(1) + " is on record in " + bed.vessel()
                    + ".");
        } else if (massG > MOST_G_PER_M2 * stands) {
            in.warn(in.units().bulk(massG) + " from " + in.units().area(stands) + "; is it typed right?");
        }
    }

    /** Fields: bed, taken off or put back, when. */
    public static FormCheck state(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        if (in.blank(0)) {
            in.problem("The site has no grow-bed.");
            return in.open();
        }
        boolean on = in.choice(1).equals(ON);
        Instant at = in.when(2);
        bed(frame, in.choice(0))
                .filter(b -> b.on() == on)
                .ifPresent(b -> in.problem(b.vessel() + " is " + (on ? "in the loop" : "taken off") + " already."));
        return in.done(in.choice(0) + " " + in.choice(1) + ".", new BedState(at, in.choice(0), on));
    }

    /** What taking the bed off would change for nitrogen, in words with figures; empty where not known. */
    public static String without(Frame frame, String id) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? ""
                : bed(frame, id)
                        .filter(b -> b.plantedM2() > 0)
                        .map(b -> UsWords.of(
                                NitrogenBalance.without(
                                        season.nitrogen(),
                                        b,
                                        frame.snapshot().systemVolume().likelyL()),
                                frame.snapshot().site().units()))
                        .orElse("");
    }
}
