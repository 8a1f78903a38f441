package bywash.rules.husbandry.stock;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One cohort as it stands.
 *
 * @param vessel id of the tank it lives in
 * @param count fish now
 * @param lost fish that died or went missing
 * @param movedOut fish that went to other cohorts or away
 * @param mean mean mass of one fish now
 * @param feedG feed given so far, g
 * @param whole conversion over its whole time here
 * @param lastWeighed null where it was never weighed here
 * @param density of the tank with all cohorts in it; null where the tank is not known
 */
public record CohortStatus(
        String id,
        String species,
        String vessel,
        Instant since,
        int count,
        int stocked,
        int lost,
        int movedOut,
        int harvested,
        MassEstimate mean,
        double feedG,
        FeedConversion whole,
        List<Weighing> weighings,
        List<GrowthPeriod> periods,
        List<HarvestRecord> harvests,
        @Nullable Instant lastWeighed,
        @Nullable Density density) {
    public CohortStatus {
        weighings = List.copyOf(weighings);
        periods = List.copyOf(periods);
        harvests = List.copyOf(harvests);
    }

    /** All of it, g. */
    public MassEstimate biomass() {
        return mean.times(count);
    }

    /** Share of those stocked that did not die, %. */
    public double survivalPercent() {
        return stocked == 0 ? Double.NaN : 100.0 * (stocked - lost) / stocked;
    }

    /** Masses of every fish harvested one by one, in order of time. */
    public List<Double> harvestMassesG() {
        return harvests.stream().flatMap(h -> h.massesG().stream()).toList();
    }

    /** All harvested, g. */
    public double harvestG() {
        return harvests.stream().mapToDouble(HarvestRecord::totalG).sum();
    }

    CohortStatus withDensity(Density density) {
        return new CohortStatus(
                id,
                species,
                vessel,
                since,
                count,
                stocked,
                lost,
                movedOut,
                harvested,
                mean,
                feedG,
                whole,
                weighings,
                periods,
                harvests,
                lastWeighed,
                density);
    }
}
