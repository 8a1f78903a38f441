package bywash.rules.husbandry.plants;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One bed as it stands.
 *
 * @param on whether it is in the loop
 * @param stands what grows in it
 * @param harvestedG fresh mass taken from it so far, g
 * @param removedN nitrogen that its harvests carried off, g
 * @param lastHarvest null before the first
 */
public record BedStatus(
        String vessel,
        boolean on,
        List<Stand> stands,
        double harvestedG,
        Range removedN,
        @Nullable Instant lastHarvest) {
    public BedStatus {
        stands = List.copyOf(stands);
    }

    /** One crop on an area of the bed, m2. */
    public record Stand(Crop crop, String word, double areaM2, Instant since) {}

    /** Planted, m2; a bed out of the loop has none that counts. */
    public double plantedM2() {
        return on ? stands.stream().mapToDouble(Stand::areaM2).sum() : 0;
    }

    /** Nitrogen its plants take, g/d. */
    public Range uptakeGPerDay() {
        Range sum = Range.NOTHING;
        if (on) {
            for (Stand stand : stands) {
                sum = sum.plus(stand.crop().uptakeGPerM2Day().times(stand.areaM2()));
            }
        }
        return sum;
    }
}
