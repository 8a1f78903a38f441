package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.BatchFill;
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
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.OutOfService;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.ReturnToService;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.Unshelve;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.text.Names;
import bywash.rules.water.LabelStrength;
import java.util.Locale;

/** What the grower entered, as one line of words. */
public final class EntryWords {
    private EntryWords() {}

    public static String of(OperatorEntry entry, DisplayUnits units) {
        StockUnits stock = new StockUnits(units.units());
        return switch (entry.kind()) {
            case TOP_UP_START -> of((TopUpStart) entry, units);
            case TOP_UP_END -> "top-up into " + ((TopUpEnd) entry).vessel() + " ended";
            case BATCH_FILL -> of((BatchFill) entry, units);
            case BATCH_TREAT -> of((BatchTreat) entry);
            case TEST -> of((WaterTest) entry, units);
            case STOCKING -> of((StockingChange) entry);
            case FEED -> of((Feed) entry, stock);
            case FISH_IN -> of((FishIn) entry, stock);
            case HARVEST -> of((Harvest) entry, stock);
            case WEIGH -> of((Weigh) entry, stock);
            case FISH_LOSS -> of((FishLoss) entry);
            case FISH_MOVE -> of((FishMove) entry);
            case PLANT -> of((Plant) entry, stock);
            case CROP_HARVEST -> of((CropHarvest) entry, stock);
            case BED -> of((BedState) entry);
            case DOSE -> of((Dose) entry);
            case PH_PLAN -> of((PhAim) entry);
            case CALIBRATE -> of((Calibrate) entry);
            case PROBE_CARE -> ((ProbeCare) entry).probe() + ": " + ((ProbeCare) entry).care();
            case ACKNOWLEDGE -> of((Acknowledge) entry);
            case SHELVE -> of((Shelve) entry);
            case UNSHELVE -> "unshelved " + ((Unshelve) entry).alarm() + " " + ((Unshelve) entry).subject();
            case MAINTENANCE_START -> of((MaintenanceStart) entry);
            case MAINTENANCE_END -> ((MaintenanceEnd) entry).subject() + " in use again";
            case OUT_OF_SERVICE -> of((OutOfService) entry);
            case RETURN_TO_SERVICE -> of((ReturnToService) entry);
            case NOTE -> "note: " + ((Note) entry).text();
            case STEP_DONE -> of((StepDone) entry);
            case WITHDRAW -> of((Withdraw) entry);
        };
    }

    private static String of(TopUpStart e, DisplayUnits units) {
        return "top-up of " + units.volume(e.volumeL()) + " into " + e.vessel() + " from " + e.source() + ", "
                + Words.span(e.duration());
    }

    private static String of(BatchFill e, DisplayUnits units) {
        return e.vessel() + " filled with " + units.volume(e.volumeL());
    }

    private static String of(BatchTreat e) {
        String amount = Double.isNaN(e.amountG()) ? "" : ", " + Words.number(e.amountG(), 1) + " g";
        return e.vessel() + " treated: " + Names.words(e.treatment()) + amount + strength(e.strengthPercent());
    }

    private static String of(WaterTest e, DisplayUnits units) {
        return "test of " + e.vessel() + ": " + TestKind.label(e.quantity()) + " "
                + TestKind.words(e.quantity(), e.value(), units);
    }

    private static String of(StockingChange e) {
        return "stocking is now " + e.stocking().name().toLowerCase(Locale.ROOT)
                + (e.species() == null ? "" : ", " + Names.species(e.species()));
    }

    private static String of(Feed e, StockUnits units) {
        String protein = Double.isNaN(e.proteinFraction())
                ? ""
                : ", protein " + Words.number(e.proteinFraction() * 100, 0) + " %";
        return "fed " + units.mass(e.massG()) + protein + (e.cohort() == null ? "" : ", cohort " + e.cohort());
    }

    private static String of(FishIn e, StockUnits units) {
        return e.count() + " " + Names.species(e.species()) + " in, cohort " + e.cohort() + ", "
                + units.mass(e.meanMassG()) + " each";
    }

    private static String of(Harvest e, StockUnits units) {
        double total = Double.isNaN(e.totalG())
                ? e.massesG().stream().mapToDouble(Double::doubleValue).sum()
                : e.totalG();
        return e.count() + " harvested from cohort " + e.cohort() + ", " + units.bulk(total);
    }

    private static String of(Weigh e, StockUnits units) {
        return "cohort " + e.cohort() + ": " + (e.all() ? "all " : "") + e.count() + " weighed, "
                + units.mass(e.totalG());
    }

    private static String of(FishLoss e) {
        return "cohort " + e.cohort() + ": " + e.count() + " lost" + (e.cause() == null ? "" : ", " + e.cause());
    }

    private static String of(FishMove e) {
        return "cohort " + e.cohort() + ": " + e.count() + " moved to " + e.vessel();
    }

    private static String of(Plant e, StockUnits units) {
        return e.vessel() + " planted: " + Names.words(e.crop()) + ", " + units.area(e.areaM2());
    }

    private static String of(CropHarvest e, StockUnits units) {
        return e.vessel() + " harvested: " + Names.words(e.crop()) + ", " + units.mass(e.massG());
    }

    private static String of(BedState e) {
        return e.vessel() + (e.on() ? " put back in the loop" : " taken out of the loop");
    }

    private static String of(Dose e) {
        return e.vessel() + " dosed: " + Names.words(e.reagent()) + ", " + Words.number(e.massG(), 1) + " g"
                + strength(e.strengthPercent());
    }

    private static String of(PhAim e) {
        return "pH plan: to " + Words.number(e.targetPh(), 1) + " by " + Names.words(e.reagent());
    }

    /** What is sold pure is said without it. */
    private static String strength(double percent) {
        return Double.isNaN(percent) || percent == 100 ? "" : " of " + LabelStrength.words(percent);
    }

    private static String of(Calibrate e) {
        return (e.probe() + " calibrated " + e.detail()).strip();
    }

    private static String of(Acknowledge e) {
        return "acknowledged " + (e.alarm() == null ? "all" : e.alarm() + " " + or(e.subject()));
    }

    private static String of(Shelve e) {
        return "shelved " + e.alarm() + " " + e.subject() + " for " + Words.span(e.duration());
    }

    private static String of(MaintenanceStart e) {
        return e.subject() + " in care for " + Words.span(e.duration()) + after(": ", e.detail());
    }

    private static String of(OutOfService e) {
        return "out of service: " + e.alarm() + " " + e.subject() + after(", ", e.detail());
    }

    private static String of(ReturnToService e) {
        return "in service again: " + e.alarm() + " " + e.subject();
    }

    private static String of(StepDone e) {
        return "step done: " + e.step() + " of " + e.incident() + after(", ", e.note());
    }

    private static String of(Withdraw e) {
        return "taken back: " + e.of() + " of " + e.entered().toString().replace("T", " ") + after(", ", e.why());
    }

    /** Nothing where there is nothing to say. */
    private static String after(String mark, String words) {
        return words.isEmpty() ? "" : mark + words;
    }

    private static String or(@org.jspecify.annotations.Nullable String subject) {
        return subject == null ? "everywhere" : subject;
    }
}
