package bywash.rules.husbandry.season;

import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.NitrogenStatus;
import bywash.rules.husbandry.probes.ProbeCareStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The season as it stands; immutable.
 *
 * @param cohorts in the order they came
 * @param beds in the order of the site file
 * @param ph the pH and its plan
 * @param fishless the bacteria and the checklist; null while there are fish
 * @param probes care of each probe that is calibrated, in the order of the site file
 * @param remarks entries that could not be booked, oldest first, with what would be right
 */
public record SeasonStatus(
        List<CohortStatus> cohorts,
        FeedStatus feed,
        List<BedStatus> beds,
        NitrogenStatus nitrogen,
        PhStatus ph,
        @Nullable FishlessStatus fishless,
        List<ProbeCareStatus> probes,
        List<String> remarks) {
    public SeasonStatus {
        cohorts = List.copyOf(cohorts);
        beds = List.copyOf(beds);
        probes = List.copyOf(probes);
        remarks = List.copyOf(remarks);
    }
}
