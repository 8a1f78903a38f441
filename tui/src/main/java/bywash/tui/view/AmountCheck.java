package bywash.tui.view;

import bywash.ingest.site.KnownWords;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.util.List;

/** Whether what an entry brings can go where it says, and so much of it: what a form never offers, the shell may be told. */
final class AmountCheck {
    /** As the form has it: ISA-18.2 wants shelving to be limited in time. */
    static final Duration LONGEST_SHELF = Duration.ofHours(24);

    static final Duration LONGEST_TOP_UP = Duration.ofHours(24);

    private AmountCheck() {}

    /** What is wrong and what would be right, without a full stop; empty where nothing is. */
    static String problem(Site site, OperatorEntry entry) {
        return switch (entry.kind()) {
            case TOP_UP_START -> topUp(site, (TopUpStart) entry);
            case BATCH_FILL -> fill(site, (BatchFill) entry);
            case BATCH_TREAT -> reserve(site, ((BatchTreat) entry).vessel());
            case DOSE -> dose(site, (Dose) entry);
            case SHELVE ->
                ((Shelve) entry).duration().compareTo(LONGEST_SHELF) > 0
                        ? "an alarm is shelved for at most 24 h; out-of-service takes one out until return-to-service"
                        : "";
            case TEST -> test(site, (WaterTest) entry);
            case TOP_UP_END, STOCKING, FEED, FISH_IN, HARVEST, WEIGH, FISH_LOSS, FISH_MOVE, PLANT -> "";
            case CROP_HARVEST, BED, CALIBRATE, PROBE_CARE, PH_PLAN, ACKNOWLEDGE, UNSHELVE -> "";
            case MAINTENANCE_START, MAINTENANCE_END, OUT_OF_SERVICE, RETURN_TO_SERVICE -> "";
            case NOTE, STEP_DONE, WITHDRAW -> "";
        };
    }

    private static String topUp(Site site, TopUpStart entry) {
        if (entry.duration().compareTo(LONGEST_TOP_UP) > 0) {
            return "a top-up runs for at most 24 h; give its duration";
        }
        String into = holds(site, entry.vessel(), entry.volumeL());
        return into.isEmpty() ? holds(site, entry.source(), entry.volumeL()) : into;
    }

    /** What no kit and no meter shows is a slip of the hand or of the unit: the same range as at the form. */
    private static String test(Site site, WaterTest entry) {
        DisplayUnits units = new DisplayUnits(site.units());
        return TestKind.of(entry.quantity())
                .filter(kind -> !(entry.value() >= kind.lowest() && entry.value() <= kind.highest()))
                .map(kind -> kind.label() + " of " + kind.words(entry.value(), units) + " cannot be; give "
                        + kind.number(kind.lowest(), units) + " to " + kind.words(kind.highest(), units))
                .orElse("");
    }

    private static String fill(Site site, BatchFill entry) {
        String reserve = reserve(site, entry.vessel());
        return reserve.isEmpty() ? holds(site, entry.vessel(), entry.volumeL()) : reserve;
    }

    private static String holds(Site site, String id, double litres) {
        double most = site.vessel(id).map(Vessel::volumeL).orElse(Double.POSITIVE_INFINITY);
        DisplayUnits units = new DisplayUnits(site.units());
        return litres > most
                ? id + " holds at most " + units.volume(most) + ", not " + units.volume(litres)
                        + "; give a volume that fits"
                : "";
    }

    private static String reserve(Site site, String id) {
        List<String> reserves =
                site.vessels(VesselRole.RESERVE).stream().map(Vessel::id).toList();
        return reserves.contains(id)
                ? ""
                : "vessel \"" + id + "\" is no reserve; "
                        + (reserves.isEmpty() ? "the site has none" : "it has " + String.join(", ", reserves));
    }

    private static String dose(Site site, Dose entry) {
        List<String> known = DoseForms.reagents();
        if (!known.contains(entry.reagent())) {
            return "reagent \"" + entry.reagent() + "\" is not known; give "
                    + String.join(", ", KnownWords.nearestFirst(entry.reagent(), known));
        }
        if (site.isReserve(entry.vessel())) {
            return "vessel \"" + entry.vessel() + "\" is a reserve; what goes into one is a batch-treat";
        }
        return entry.massG() > DoseForms.MOST_G
                ? "amount of dose is more than " + Words.number(DoseForms.MOST_G / 1000, 0) + " kg; give what was dosed"
                : "";
    }
}
