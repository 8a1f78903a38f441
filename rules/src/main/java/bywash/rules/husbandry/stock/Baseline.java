package bywash.rules.husbandry.stock;

import java.time.Instant;

/**
 * What a cohort was known to be, from which its growth is reckoned.
 *
 * @param meanG mean mass then; moves when fish larger or smaller than the rest are taken out
 * @param halfWidthG of the 95 % range of that mean; NaN where not known
 * @param biomassG of the whole cohort then
 * @param words how it is known
 */
record Baseline(Instant at, double meanG, double halfWidthG, double biomassG, String words) {
    Baseline scaled(double share) {
        return new Baseline(at, meanG * share, halfWidthG, biomassG, words);
    }
}
