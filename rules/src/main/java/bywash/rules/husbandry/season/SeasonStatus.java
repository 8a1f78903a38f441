package bywash.rules.husbandry.season;

import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.NitrogenStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import java.util.List;

/**
 * The season as it stands; immutable.
 *
 * @param cohorts in the order they came
 * @param beds in the order of the site file
 * @param remarks entries that could not be booked, oldest first, with what would be right
 */
public record SeasonStatus(
        List<CohortStatus> cohorts,
        FeedStatus feed,
        List<BedStatus> beds,
        NitrogenStatus nitrogen,
        List<String> remarks) {
    public SeasonStatus {
        cohorts = List.copyOf(cohorts);
        beds = List.copyOf(beds);
        remarks = List.copyOf(remarks);
    }
}
