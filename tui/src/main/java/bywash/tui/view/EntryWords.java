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
        if (entry instanceof TopUpStart e) {
            return "top-up of " + units.volume(e.volumeL()) + " into " + e.vessel() + " from " + e.source() + ", "
                    + Words.span(e.duration());
        }
        if (entry instanceof TopUpEnd e) {
            return "top-up into " + e.vessel() + " ended";
        }
        if (entry instanceof BatchFill e) {
            return e.vessel() + " filled with " + units.volume(e.volumeL());
        }
        if (entry instanceof BatchTreat e) {
            String amount = Double.isNaN(e.amountG()) ? "" : ", " + Words.number(e.amountG(), 1) + " g";
            return e.vessel() + " treated: " + Names.words(e.treatment()) + amount + strength(e.strengthPercent());
        }
        if (entry instanceof WaterTest e) {
            return "test of " + e.vessel() + ": " + TestKind.label(e.quantity()) + " "
                    + TestKind.words(e.quantity(), e.value(), units);
        }
        return fish(entry, new StockUnits(units.units()));
    }

    private static String fish(OperatorEntry entry, StockUnits units) {
        if (entry instanceof Feed e) {
            String protein = Double.isNaN(e.proteinFraction())
                    ? ""
                    : ", protein " + Words.number(e.proteinFraction() * 100, 0) + " %";
            return "fed " + units.mass(e.massG()) + protein + (e.cohort() == null ? "" : ", cohort " + e.cohort());
        }
        if (entry instanceof FishIn e) {
            return e.count() + " " + Names.species(e.species()) + " in, cohort " + e.cohort() + ", "
                    + units.mass(e.meanMassG()) + " each";
        }
        if (entry instanceof Harvest e) {
            double total = Double.isNaN(e.totalG())
                    ? e.massesG().stream().mapToDouble(Double::doubleValue).sum()
                    : e.totalG();
            return e.count() + " harvested from cohort " + e.cohort() + ", " + units.bulk(total);
        }
        if (entry instanceof StockingChange e) {
            return "stocking is now " + e.stocking().name().toLowerCase(Locale.ROOT)
                    + (e.species() == null ? "" : ", " + Names.species(e.species()));
        }
        if (entry instanceof Weigh e) {
            return "cohort " + e.cohort() + ": " + (e.all() ? "all " : "") + e.count() + " weighed, "
                    + units.mass(e.totalG());
        }
        if (entry instanceof FishLoss e) {
            return "cohort " + e.cohort() + ": " + e.count() + " lost" + (e.cause() == null ? "" : ", " + e.cause());
        }
        if (entry instanceof FishMove e) {
            return "cohort " + e.cohort() + ": " + e.count() + " moved to " + e.vessel();
        }
        return plants(entry, units);
    }

    private static String plants(OperatorEntry entry, StockUnits units) {
        if (entry instanceof Plant e) {
            return e.vessel() + " planted: " + Names.words(e.crop()) + ", " + units.area(e.areaM2());
        }
        if (entry instanceof CropHarvest e) {
            return e.vessel() + " harvested: " + Names.words(e.crop()) + ", " + units.mass(e.massG());
        }
        if (entry instanceof BedState e) {
            return e.vessel() + (e.on() ? " put back in the loop" : " taken out of the loop");
        }
        if (entry instanceof Dose e) {
            return e.vessel() + " dosed: " + Names.words(e.reagent()) + ", " + Words.number(e.massG(), 1) + " g"
                    + strength(e.strengthPercent());
        }
        if (entry instanceof PhAim e) {
            return "pH plan: to " + Words.number(e.targetPh(), 1) + " by " + Names.words(e.reagent());
        }
        if (entry instanceof ProbeCare e) {
            return e.probe() + ": " + e.care();
        }
        return desk(entry);
    }

    /** What is sold pure is said without it. */
    private static String strength(double percent) {
        return Double.isNaN(percent) || percent == 100 ? "" : " of " + LabelStrength.words(percent);
    }

    private static String desk(OperatorEntry entry) {
        if (entry instanceof Calibrate e) {
            return (e.probe() + " calibrated " + e.detail()).strip();
        }
        if (entry instanceof Acknowledge e) {
            return "acknowledged " + (e.alarm() == null ? "all" : e.alarm() + " " + or(e.subject()));
        }
        if (entry instanceof Shelve e) {
            return "shelved " + e.alarm() + " " + e.subject() + " for " + Words.span(e.duration());
        }
        if (entry instanceof Unshelve e) {
            return "unshelved " + e.alarm() + " " + e.subject();
        }
        if (entry instanceof MaintenanceStart e) {
            return e.subject() + " in care for " + Words.span(e.duration())
                    + (e.detail().isEmpty() ? "" : ": " + e.detail());
        }
        if (entry instanceof MaintenanceEnd e) {
            return e.subject() + " in use again";
        }
        if (entry instanceof OutOfService e) {
            return "out of service: " + e.alarm() + " " + e.subject()
                    + (e.detail().isEmpty() ? "" : ", " + e.detail());
        }
        if (entry instanceof ReturnToService e) {
            return "in service again: " + e.alarm() + " " + e.subject();
        }
        if (entry instanceof Note e) {
            return "note: " + e.text();
        }
        if (entry instanceof StepDone e) {
            return "step done: " + e.step() + " of " + e.incident() + (e.note().isEmpty() ? "" : ", " + e.note());
        }
        if (entry instanceof Withdraw e) {
            return "taken back: " + e.of() + " of " + e.entered().toString().replace("T", " ")
                    + (e.why().isEmpty() ? "" : ", " + e.why());
        }
        throw new IllegalArgumentException("no words for " + entry.word());
    }

    private static String or(@org.jspecify.annotations.Nullable String subject) {
        return subject == null ? "everywhere" : subject;
    }
}
