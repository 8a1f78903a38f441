package bywash.rules.husbandry.plants;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.husbandry.plants.BedStatus.Stand;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.FeedRate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** What is planted in each bed and taken from it. An entry that cannot be booked is left out and told. */
public final class CropLedger {
    private static final class Bed {
        private final List<Stand> stands = new ArrayList<>();
        private boolean on = true;
        private double harvestedG;
        private Range removedN = Range.NOTHING;
        private @Nullable Instant lastHarvest;
    }

    private final Map<String, Bed> beds = new LinkedHashMap<>();
    private final Consumer<String> remarks;

    public CropLedger(Site site, Consumer<String> remarks) {
        this.remarks = remarks;
        for (Vessel vessel : site.vessels(VesselRole.GROW_BED)) {
            beds.put(vessel.id(), new Bed());
        }
    }

    /** A bed goes out of the loop, or back. */
    public void book(BedState state) {
        Bed bed = bed(state, state.vessel());
        if (bed != null) {
            bed.on = state.on();
        }
    }

    /** A crop is planted. */
    public void book(Plant plant) {
        Bed bed = bed(plant, plant.vessel());
        if (bed == null) {
            return;
        }
        if (!(plant.areaM2() > 0)) {
            remark(plant, "has no area; an area above 0 m2");
            return;
        }
        if (!Crop.known(plant.crop())) {
            remark(
                    plant,
                    "crop " + plant.crop() + " is not known and counts as leafy; lettuce, chard, basil, herbs, leafy, "
                            + "tomato, cucumber, pepper or fruiting");
        }
        bed.stands.add(new Stand(Crop.of(plant.crop()), plant.crop(), plant.areaM2(), plant.at()));
    }

    /** Something is cut, and the bed may be bare after. */
    public void book(CropHarvest harvest) {
        Bed bed = bed(harvest, harvest.vessel());
        if (bed == null) {
            return;
        }
        Crop crop = Crop.of(harvest.crop());
        bed.harvestedG += harvest.massG();
        bed.removedN = bed.removedN.plus(crop.contentGPerKg().times(harvest.massG() / 1000));
        bed.lastHarvest = harvest.at();
        double left = clear(bed, harvest.crop(), harvest.clearedM2());
        if (left > 1e-6) {
            remark(
                    harvest,
                    "clears more " + harvest.crop() + " than " + harvest.vessel()
                            + " has on record; plant entries for all that grows");
        }
    }

    /** Oldest stand of the crop first; returns what could not be cleared, m2. */
    private static double clear(Bed bed, String crop, double areaM2) {
        double left = areaM2;
        List<Stand> after = new ArrayList<>();
        for (Stand stand : bed.stands) {
            double gone = stand.word().equals(crop) ? Math.min(left, stand.areaM2()) : 0;
            left -= gone;
            if (stand.areaM2() - gone > 1e-6) {
                after.add(new Stand(stand.crop(), stand.word(), stand.areaM2() - gone, stand.since()));
            }
        }
        bed.stands.clear();
        bed.stands.addAll(after);
        return left;
    }

    private @Nullable Bed bed(OperatorEntry entry, String vessel) {
        Bed bed = beds.get(vessel);
        if (bed == null) {
            remark(
                    entry,
                    "bed " + vessel + " is not in the site file; "
                            + (beds.isEmpty() ? "it has no grow-bed" : "one of " + String.join(", ", beds.keySet())));
        }
        return bed;
    }

    private void remark(OperatorEntry entry, String what) {
        remarks.accept(entry.at() + " " + entry.word() + ": " + what);
    }

    /** All beds in the order of the site file. */
    public List<BedStatus> status() {
        List<BedStatus> all = new ArrayList<>();
        beds.forEach((vessel, bed) ->
                all.add(new BedStatus(vessel, bed.on, bed.stands, bed.harvestedG, bed.removedN, bed.lastHarvest)));
        return all;
    }

    /** Feed that all planted areas can use; null where nothing is planted. */
    public static FeedRate.@Nullable Range feedUse(List<BedStatus> beds) {
        double low = 0;
        double high = 0;
        for (BedStatus bed : beds) {
            if (bed.on()) {
                for (Stand stand : bed.stands()) {
                    FeedRate.Range range =
                            FeedRate.byBedArea(stand.areaM2(), stand.crop().group());
                    low += range.lowGPerDay();
                    high += range.highGPerDay();
                }
            }
        }
        return high > 0 ? new FeedRate.Range(low, high) : null;
    }
}
