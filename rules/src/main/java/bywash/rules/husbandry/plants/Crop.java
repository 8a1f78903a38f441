package bywash.rules.husbandry.plants;

import bywash.rules.water.FeedRate;

/**
 * What grows in a bed, with the nitrogen it takes.
 *
 * <p>Sources: tomato in beds of expanded clay took 0.43 g of N/m2/d into its fruit, 69 % of all that left the water, so 0.62 in all: A. Graber
 * and R. Junge, 2009, Aquaponic systems: nutrient recycling from fish wastewater by vegetable production, Desalination
 * 246:147-156, abstract read. The other uptakes follow from yields of 3 to 6 kg/m2 in 30 d at the nitrogen of the fresh crop.
 *
 * <p>Nitrogen of the fresh crop, g/kg: protein / 6.25 of USDA National Nutrient Database for Standard Reference, Legacy Release: lettuce
 * 1.35 (butterhead) and 1.36 % (green leaf), read, so 2.2; basil 3.2 %, read as quoted, so 5.0. Lettuce as a whole crop 75 lb of N in
 * 15 short tons, so 2.5: New England Vegetable Management Guide, table 4, read. All other contents are from memory: to be confirmed.
 * Young plants and winter take far less.
 */
public enum Crop {
    LETTUCE("lettuce", FeedRate.Crop.LEAFY, 0.2, 0.5, 2.0, 2.5),
    CHARD("chard", FeedRate.Crop.LEAFY, 0.3, 0.7, 2.5, 3.5),
    BASIL("basil", FeedRate.Crop.LEAFY, 0.3, 0.8, 3.5, 5.0),
    HERBS("herbs", FeedRate.Crop.LEAFY, 0.3, 0.7, 3.0, 5.0),
    LEAFY("leafy", FeedRate.Crop.LEAFY, 0.2, 0.8, 2.0, 5.0),
    TOMATO("tomato", FeedRate.Crop.FRUITING, 0.4, 0.7, 1.2, 1.8),
    CUCUMBER("cucumber", FeedRate.Crop.FRUITING, 0.4, 0.8, 1.0, 1.6),
    PEPPER("pepper", FeedRate.Crop.FRUITING, 0.3, 0.7, 1.6, 2.4),
    FRUITING("fruiting", FeedRate.Crop.FRUITING, 0.3, 0.8, 1.0, 2.4);

    private final String word;
    private final FeedRate.Crop group;
    private final double lowUptake;
    private final double highUptake;
    private final double lowContent;
    private final double highContent;

    Crop(String word, FeedRate.Crop group, double lowUptake, double highUptake, double lowContent, double highContent) {
        this.word = word;
        this.group = group;
        this.lowUptake = lowUptake;
        this.highUptake = highUptake;
        this.lowContent = lowContent;
        this.highContent = highContent;
    }

    /** A crop by its word; one that is not known counts as any leafy crop. */
    public static Crop of(String word) {
        for (Crop crop : values()) {
            if (crop.word.equals(word)) {
                return crop;
            }
        }
        return LEAFY;
    }

    public static boolean known(String word) {
        return of(word) != LEAFY || LEAFY.word.equals(word);
    }

    public String word() {
        return word;
    }

    /** How much feed an area of it can use. */
    public FeedRate.Crop group() {
        return group;
    }

    /** Nitrogen that a grown stand takes, g/m2/d. */
    public Range uptakeGPerM2Day() {
        return new Range(lowUptake, highUptake);
    }

    /** Nitrogen in the fresh harvest, g/kg. */
    public Range contentGPerKg() {
        return new Range(lowContent, highContent);
    }
}
