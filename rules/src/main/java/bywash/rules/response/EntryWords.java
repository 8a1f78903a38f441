package bywash.rules.response;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.WaterTest;
import java.util.Locale;

/** An operator entry in words, for the record of an incident; empty for entries that say nothing of water. */
final class EntryWords {
    private EntryWords() {}

    static String of(OperatorEntry entry) {
        return switch (entry.kind()) {
            case TOP_UP_START -> of((TopUpStart) entry);
            case TOP_UP_END -> "top-up into " + ((TopUpEnd) entry).vessel() + " ended";
            case BATCH_FILL -> of((BatchFill) entry);
            case BATCH_TREAT -> of((BatchTreat) entry);
            case TEST -> of((WaterTest) entry);
            case NOTE -> "note: " + ((Note) entry).text();
            case STOCKING, FEED, FISH_IN, HARVEST, WEIGH, FISH_LOSS, FISH_MOVE, PLANT, CROP_HARVEST, BED -> "";
            case DOSE, PH_PLAN, CALIBRATE, PROBE_CARE, STEP_DONE, WITHDRAW, ACKNOWLEDGE -> "";
            case SHELVE, UNSHELVE, MAINTENANCE_START, MAINTENANCE_END, OUT_OF_SERVICE, RETURN_TO_SERVICE -> "";
        };
    }

    private static String of(TopUpStart e) {
        return String.format(
                Locale.ROOT, "top-up declared: %.0f L from %s into %s", e.volumeL(), e.source(), e.vessel());
    }

    private static String of(BatchFill e) {
        return String.format(Locale.ROOT, "%s filled with %.0f L", e.vessel(), e.volumeL());
    }

    private static String of(BatchTreat e) {
        String amount = Double.isNaN(e.amountG()) ? "" : String.format(Locale.ROOT, ", %.1f g", e.amountG());
        return e.vessel() + " treated: " + e.treatment() + amount;
    }

    private static String of(WaterTest e) {
        return String.format(Locale.ROOT, "test of %s in %s: %.2f", e.quantity(), e.vessel(), e.value());
    }
}
