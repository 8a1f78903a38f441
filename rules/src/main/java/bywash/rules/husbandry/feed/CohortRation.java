package bywash.rules.husbandry.feed;

/**
 * One cohort's feed for a day.
 *
 * @param temperatureShare 0 to 1
 * @param lowG lower end, g/d
 * @param highG upper end, g/d
 * @param words how it came about
 */
public record CohortRation(
        String cohort,
        double biomassG,
        Ration ration,
        double temperatureShare,
        double lowG,
        double highG,
        String words) {}
