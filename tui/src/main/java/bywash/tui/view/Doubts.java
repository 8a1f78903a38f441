package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.site.Stocking;

/** What may be right but is rather a slip, or does harm where it is one: asked at the form, said by the shell. */
final class Doubts {
    private static final double FAR_OVER = 2;

    private Doubts() {}

    /** A sentence; empty where there is none. */
    static String of(Frame frame, OperatorEntry entry) {
        return switch (entry.kind()) {
            case FEED -> feed(frame, ((Feed) entry).massG());
            case STOCKING -> stocking(frame, (StockingChange) entry);
            case DOSE -> dose(frame, (Dose) entry);
            case PLANT -> SizeCheck.doubt(frame.snapshot().site(), (Plant) entry);
            case TOP_UP_START, TOP_UP_END, BATCH_FILL, BATCH_TREAT, TEST, FISH_IN, HARVEST, WEIGH, FISH_LOSS -> "";
            case FISH_MOVE, CROP_HARVEST, BED, CALIBRATE, PROBE_CARE, PH_PLAN, ACKNOWLEDGE, SHELVE, UNSHELVE -> "";
            case MAINTENANCE_START, MAINTENANCE_END, OUT_OF_SERVICE, RETURN_TO_SERVICE -> "";
            case NOTE, STEP_DONE, WITHDRAW -> "";
        };
    }

    private static int fish(Frame frame) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? 0
                : season.cohorts().stream().mapToInt(CohortStatus::count).sum();
    }

    private static String feed(Frame frame, double massG) {
        SeasonStatus season = frame.snapshot().season();
        StockUnits units = StockUnits.of(frame);
        double most = season == null ? 0 : season.feed().plan().highG();
        return most > 0 && massG > FAR_OVER * most
                ? units.mass(massG) + " at once is far over the " + units.mass(most)
                        + " a day that the fish would take; is it typed right?"
                : "";
    }

    private static String stocking(Frame frame, StockingChange change) {
        int fish = fish(frame);
        return change.stocking() == Stocking.FISHLESS && fish > 0
                ? fish + " fish are on record: without fish the bands are the plants' and no ammonia alarm is raised."
                        + " Enter their harvest, move or loss first."
                : "";
    }

    private static String dose(Frame frame, Dose dose) {
        boolean fish = frame.snapshot().stocking() == Stocking.FISH || fish(frame) > 0;
        return fish && DoseForms.ammonia(dose.reagent()).isPresent()
                ? "Fish are on record: ammonia is never dosed with fish in the water."
                : "";
    }
}
