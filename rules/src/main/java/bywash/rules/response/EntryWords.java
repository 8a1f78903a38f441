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
        if (entry instanceof TopUpStart e) {
            return String.format(
                    Locale.ROOT, "top-up declared: %.0f L from %s into %s", e.volumeL(), e.source(), e.vessel());
        } else if (entry instanceof TopUpEnd e) {
            return "top-up into " + e.vessel() + " ended";
        } else if (entry instanceof BatchFill e) {
            return String.format(Locale.ROOT, "%s filled with %.0f L", e.vessel(), e.volumeL());
        } else if (entry instanceof BatchTreat e) {
            String amount = Double.isNaN(e.amountG()) ? "" : String.format(Locale.ROOT, ", %.1f g", e.amountG());
            return e.vessel() + " treated: " + e.treatment() + amount;
        } else if (entry instanceof WaterTest e) {
            return String.format(Locale.ROOT, "test of %s in %s: %.2f", e.quantity(), e.vessel(), e.value());
        } else if (entry instanceof Note e) {
            return "note: " + e.text();
        }
        return "";
    }
}
