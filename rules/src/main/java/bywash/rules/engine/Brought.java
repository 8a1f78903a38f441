package bywash.rules.engine;

import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.ReserveBatch;
import bywash.rules.chlorine.ResidualTracker;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.text.Sentence;
import java.time.Instant;

/**
 * What water does that runs in unplanned, by where it comes from. Only a reserve whose batch is on record brings what that batch
 * holds; water of any other source counts as mains water.
 */
final class Brought {
    private static final String OVERFLOWS = "the vessel overflows";

    private final Mains mains;
    private final ResidualTracker residual;

    Brought(Mains mains, ResidualTracker residual) {
        this.mains = mains;
        this.residual = residual;
    }

    /** One sentence; empty where it is what untreated mains water does. */
    String consequence(String source, Instant at) {
        if (mains.disinfectant() == Disinfectant.NONE) {
            return "By the site file the mains carries no disinfectant; but " + OVERFLOWS
                    + ", and temperature and pH move.";
        }
        ReserveBatch batch = residual.batch(source);
        return batch == null ? "" : of(batch.view(at));
    }

    private static String of(BatchView batch) {
        String reserve = batch.vessel();
        return switch (batch.safety()) {
            case CONFIRMED ->
                "Water of " + reserve + " was tested free of chlorine; but " + OVERFLOWS + ", and " + reserve
                        + " runs empty.";
            case EXPECTED, WAITING, NEVER ->
                Sentence.of(
                        "Water of %s brings %.2f to %.2f mg/L of chlorine (%s), and %s.",
                        reserve, batch.residual().lowMgL(), batch.residual().highMgL(), batch.words(), OVERFLOWS);
            case UNKNOWN, NO_DISINFECTANT -> "";
        };
    }
}
