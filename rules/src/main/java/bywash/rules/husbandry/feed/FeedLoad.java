package bywash.rules.husbandry.feed;

import bywash.rules.water.Nitrification;

/**
 * What a day's feed does to the water, once fish and bacteria are done with it.
 *
 * <p>Source: ammonia, nitrate and alkalinity by {@link Nitrification}. Oxygen: 1.25 g a gram of feed in all, C. E. Boyd, Oxygen demand
 * of aquaculture feed, Global Aquaculture Advocate, read in public (fish, rotting waste and nitrification together, the upper end
 * where waste is not taken out); the lower end is 0.5 g for the fish, from memory, and the nitrification.
 *
 * @param feedGPerDay feed, g/d
 * @param tanGPerDay total ammonia nitrogen, g/d; as much nitrate nitrogen follows
 * @param oxygenLowGPerDay oxygen taken, g/d, lower end
 * @param oxygenHighGPerDay upper end
 * @param alkalinityGPerDay alkalinity used up, g/d as CaCO3
 */
public record FeedLoad(
        double feedGPerDay,
        double tanGPerDay,
        double oxygenLowGPerDay,
        double oxygenHighGPerDay,
        double alkalinityGPerDay) {
    private static final double FISH_OXYGEN = 0.5;
    private static final double ALL_OXYGEN = 1.25;

    /**
     * Follows a day's feed.
     *
     * @param feedGPerDay feed (g/d, 0 to 1 000 000)
     * @param proteinPercent crude protein (%, 10 to 70)
     */
    public static FeedLoad of(double feedGPerDay, double proteinPercent) {
        double tan = Nitrification.tanGPerDay(feedGPerDay, proteinPercent);
        double low = FISH_OXYGEN * feedGPerDay + Nitrification.oxygenGPerDay(tan);
        return new FeedLoad(
                feedGPerDay,
                tan,
                Math.min(low, ALL_OXYGEN * feedGPerDay),
                ALL_OXYGEN * feedGPerDay,
                Nitrification.alkalinityGPerDay(tan));
    }
}
