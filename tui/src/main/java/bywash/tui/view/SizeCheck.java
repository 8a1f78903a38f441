package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Site;
import bywash.rules.site.SystemVolume;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Figures;
import org.jspecify.annotations.Nullable;

/**
 * Whether so much can be at this site at all: feed beside the fish on record, fish beside the water of the tanks, plants beside the
 * bed, chemicals beside the water they go into. The bounds are those of what exists anywhere, so that only a slip of the hand or of
 * a unit passes them; what is merely unusual is asked at the form.
 */
final class SizeCheck {
    /** Fry take up to 30 % of their mass a day, older fish far less (tables for tilapia, Popma and Green 1990, from memory). */
    private static final double MOST_FED_SHARE = 0.3;
    /** Beside a stock on record so much feed may go astray: 1 g in each litre of the tanks. */
    private static final double FED_G_PER_L = 1;
    /** Of a stock that is not on record: 100 kg/m3 of fish, a twentieth of their mass a day. */
    private static final double FED_UNKNOWN_G_PER_L = 5;
    /** No fish are kept more densely: air-breathing catfish come near it. From memory. */
    private static final double MOST_FISH_G_PER_L = 500;
    /** Beds of media are no flatter than this, m; channels and rafts (no media) may hold a film of water. */
    private static final double FLATTEST_MEDIA_M = 0.1;

    private static final double USUAL_MEDIA_M = 0.15;
    private static final double FLATTEST_WATER_M = 0.01;
    /** A crop of tomato or cucumber of a whole year is as much; no single harvest is more. From memory. */
    private static final double MOST_CROP_G_PER_M2 = 50_000;
    /** Doses are of some mg to a few hundred mg a litre. */
    private static final double MOST_CHEMICAL_G_PER_L = 2;

    private final Site site;
    private final @Nullable SeasonStatus season;
    private final StockUnits stock;
    private final DisplayUnits units;

    private SizeCheck(Site site, @Nullable SeasonStatus season) {
        this.site = site;
        this.season = season;
        this.stock = new StockUnits(site.units());
        this.units = new DisplayUnits(site.units());
    }

    /**
     * What is wrong and what would be right, without a full stop; empty where nothing is.
     *
     * @param season what is on record; null where nobody knows
     */
    static String problem(Site site, @Nullable SeasonStatus season, OperatorEntry entry) {
        SizeCheck check = new SizeCheck(site, season);
        return switch (entry.kind()) {
            case FEED -> check.feed(((Feed) entry).massG());
            case FISH_IN -> check.fishIn((FishIn) entry);
            case WEIGH -> check.fish(((Weigh) entry).totalG(), null, " weighed");
            case HARVEST -> check.harvest((Harvest) entry);
            case PLANT -> check.area(((Plant) entry).vessel(), ((Plant) entry).areaM2(), "planted");
            case CROP_HARVEST -> check.crop((CropHarvest) entry);
            case DOSE -> check.dose((Dose) entry);
            case BATCH_TREAT -> check.treat((BatchTreat) entry);
            case TOP_UP_START, TOP_UP_END, BATCH_FILL, TEST, STOCKING, FISH_LOSS, FISH_MOVE, BED, CALIBRATE -> "";
            case PROBE_CARE, PH_PLAN, ACKNOWLEDGE, SHELVE, UNSHELVE, MAINTENANCE_START, MAINTENANCE_END -> "";
            case OUT_OF_SERVICE, RETURN_TO_SERVICE, NOTE, STEP_DONE, WITHDRAW -> "";
        };
    }

    private double tanksL() {
        return site.vessels(VesselRole.FISH_TANK).stream()
                .mapToDouble(Vessel::volumeL)
                .sum();
    }

    private String feed(double massG) {
        double fishG = season == null
                ? 0
                : season.cohorts().stream()
                        .mapToDouble(c -> c.biomass().highG())
                        .sum();
        double most =
                fishG > 0 ? Math.max(MOST_FED_SHARE * fishG, FED_G_PER_L * tanksL()) : FED_UNKNOWN_G_PER_L * tanksL();
        if (!(most > 0) || massG <= most) {
            return "";
        }
        String why = fishG > 0
                ? "for the " + stock.bulk(fishG) + " of fish on record; give what was fed, or put the stock right first"
                : "for tanks of " + units.volume(tanksL()) + "; give what was fed";
        return stock.bulk(massG) + " of feed at once is more than can be, at most " + stock.bulk(most) + " " + why;
    }

    private String fishIn(FishIn in) {
        return fish(in.count() * in.meanMassG(), in.vessel(), "");
    }

    private String harvest(Harvest out) {
        double weighed = out.massesG().stream().mapToDouble(g -> g).sum();
        return fish(Double.isNaN(out.totalG()) ? weighed : out.totalG(), null, " harvested");
    }

    /** @param vessel where they are; null for any of the tanks */
    private String fish(double massG, @Nullable String vessel, String how) {
        double litres = vessel == null
                ? tanksL()
                : site.vessel(vessel).map(Vessel::volumeL).orElse(Double.NaN);
        double most = MOST_FISH_G_PER_L * litres;
        return most > 0 && massG > most
                ? stock.bulk(massG) + " of fish" + how + " is more than can live in "
                        + (vessel == null ? "tanks" : vessel) + " of " + units.volume(litres)
                        + ", at most " + stock.bulk(most) + "; give count and mass as they are"
                : "";
    }

    /** The same as {@link #problem} of what is unusual and may be right; empty where nothing is. */
    static String doubt(Site site, Plant plant) {
        Vessel bed = site.vessel(plant.vessel()).orElse(null);
        double depthM = bed == null ? Double.NaN : bed.volumeL() / 1000 / plant.areaM2();
        return bed != null && bed.mediaPorosity() < 1 && depthM < USUAL_MEDIA_M
                ? "Over " + new StockUnits(site.units()).area(plant.areaM2()) + " the media of " + bed.id()
                        + " would be " + new DisplayUnits(site.units()).height(depthM * 1000)
                        + " deep; is the area right?"
                : "";
    }

    /** The largest that a bed can be, m2; NaN where nothing tells. */
    private double largestM2(String id) {
        Vessel bed = site.vessel(id).orElse(null);
        if (bed == null || !(bed.volumeL() > 0)) {
            return Double.NaN;
        }
        double flattest = bed.mediaPorosity() < 1 ? FLATTEST_MEDIA_M : FLATTEST_WATER_M;
        return bed.volumeL() / 1000 / flattest;
    }

    private String area(String id, double areaM2, String how) {
        double most = largestM2(id);
        return areaM2 > most
                ? stock.area(areaM2) + " " + how + " is more than " + id + " can have: with "
                        + units.volume(site.vessel(id).map(Vessel::volumeL).orElse(Double.NaN))
                        + " of media or water at most " + stock.area(most) + "; give the area in that bed"
                : "";
    }

    private String crop(CropHarvest crop) {
        String cleared = area(crop.vessel(), crop.clearedM2(), "cleared");
        double most = MOST_CROP_G_PER_M2 * largestM2(crop.vessel());
        return cleared.isEmpty() && crop.massG() > most
                ? stock.bulk(crop.massG()) + " harvested is more than " + crop.vessel() + " can bear, at most "
                        + stock.bulk(most) + "; give what was weighed"
                : cleared;
    }

    private String dose(Dose dose) {
        double litres = site.isReserve(dose.vessel())
                ? Double.NaN
                : SystemVolume.of(site).highL();
        return chemical(dose.reagent(), dose.massG(), litres, "the system");
    }

    private String treat(BatchTreat treat) {
        double litres = site.vessel(treat.vessel()).map(Vessel::volumeL).orElse(Double.NaN);
        return chemical(treat.treatment(), treat.amountG(), litres, treat.vessel());
    }

    /** Chemicals stay in grams for every site. */
    private String chemical(String what, double grams, double litres, String where) {
        double most = MOST_CHEMICAL_G_PER_L * litres;
        return grams > most
                ? Figures.of(grams, 0) + " g of " + what + " is more than anybody puts into the " + units.volume(litres)
                        + " of " + where + ", at most " + Figures.of(most, 0) + " g; give what was put in"
                : "";
    }
}
