package bywash.rules.husbandry.stock;

import java.time.Instant;
import java.util.List;

/** One harvest of a cohort; {@code massesG} of those weighed one by one. */
public record HarvestRecord(Instant at, int count, double totalG, List<Double> massesG) {
    public HarvestRecord {
        massesG = List.copyOf(massesG);
    }
}
