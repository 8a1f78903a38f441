package bywash.rules.response;

import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.site.SystemVolume;
import bywash.rules.water.DechlorinationDose;
import bywash.rules.water.DechlorinationDose.Water;
import bywash.rules.water.Dechlorinator;
import java.util.Locale;

/**
 * Grams of dechlorinator for the system and for a reserve, pure chemical with a tenth in excess. The system's is reckoned on the
 * high end of the estimate and of the volume: too little leaves chlorine, a tenth of a gram too much of these does no harm.
 */
final class DoseWords {
    private static final double EXCESS_PERCENT = 10;
    private static final double MOST_MG_L = 20;

    static final String CAUTION =
            "Arithmetic for pure chemical: divide by the strength on the label and follow the label. Gloves and"
                    + " eye protection. Dissolve in a bucket of system water, add slowly where the water is moved, air on. Never mix"
                    + " chemicals.";

    private DoseWords() {}

    static String system(ResidualEstimate residual, SystemVolume volume, boolean chloramine) {
        double mgL = StrictMath.min(MOST_MG_L, residual.highUgL() / 1000);
        return String.format(
                Locale.ROOT,
                "System, %.0f L at up to %.0f ug/L: %s.",
                volume.highL(),
                residual.highUgL(),
                grams(volume.highL(), mgL, chloramine));
    }

    static String reserve(BatchView batch, boolean chloramine) {
        double mgL = batch.residual().highMgL();
        double litres = StrictMath.max(1, batch.volume().highL());
        return String.format(
                Locale.ROOT,
                "%s, %.0f L at up to %.2f mg/L: %s.",
                batch.vessel(),
                litres,
                mgL,
                grams(litres, mgL, chloramine));
    }

    private static String grams(double litres, double mgL, boolean chloramine) {
        Water water = new Water(litres, mgL, chloramine);
        DechlorinationDose thiosulfate =
                DechlorinationDose.of(water, Dechlorinator.THIOSULFATE_PENTAHYDRATE, 100, EXCESS_PERCENT);
        DechlorinationDose ascorbic = DechlorinationDose.of(water, Dechlorinator.ASCORBIC_ACID, 100, EXCESS_PERCENT);
        String ammonia = chloramine
                ? String.format(Locale.ROOT, "; leaves %.2f mg/L of ammonia nitrogen", thiosulfate.ammoniaReleasedMgL())
                : "";
        return String.format(
                Locale.ROOT,
                "%s sodium thiosulfate (crystals, pentahydrate) or %s ascorbic acid%s",
                weight(thiosulfate.massG()),
                weight(ascorbic.massG()),
                ammonia);
    }

    private static String weight(double grams) {
        return String.format(Locale.ROOT, grams < 1 ? "%.2f g" : "%.1f g", grams);
    }
}
