package bywash.rules.water;

/**
 * How much feed a system carries: by the weight of the fish and by the area of the beds.
 *
 * <p>Source: C. Somerville and others, 2014, Small-scale aquaponic food production, FAO Fisheries and Aquaculture Technical Paper 589
 * (1-2 % of body weight a day at grow-out, ch. 7; 40-50 g/m2/d for leafy greens, 50-80 for fruiting vegetables, with feed of 32 %
 * protein, section on balancing), read in public copies. A guide to size a system, not a feeding table: appetite and tests decide.
 */
public final class FeedRate {
    private FeedRate() {}

    /** What grows in the beds. */
    public enum Crop {
        LEAFY("leafy", 40, 50),
        FRUITING("fruiting", 50, 80);

        private final String word;
        private final double lowGPerM2Day;
        private final double highGPerM2Day;

        Crop(String word, double lowGPerM2Day, double highGPerM2Day) {
            this.word = word;
            this.lowGPerM2Day = lowGPerM2Day;
            this.highGPerM2Day = highGPerM2Day;
        }

        /** The plain word. */
        public String word() {
            return word;
        }
    }

    /**
     * A range of feed.
     *
     * @param lowGPerDay low end (g/d)
     * @param highGPerDay high end (g/d)
     */
    public record Range(double lowGPerDay, double highGPerDay) {}

    /** Feed for a stock of fish (kg, 0 to 100 000) at a share of body weight a day (%, 0 to 10), g/d. */
    public static double byBodyWeightGPerDay(double stockKg, double percentPerDay) {
        Valid.within("stockKg", stockKg, 0, 100_000, "kg");
        return stockKg * 1000 * Valid.within("percentPerDay", percentPerDay, 0, 10, "%") / 100;
    }

    /** Feed that beds of an area (m2, 0 to 100 000) can use. */
    public static Range byBedArea(double areaM2, Crop crop) {
        Valid.within("areaM2", areaM2, 0, 100_000, "m2");
        return new Range(areaM2 * crop.lowGPerM2Day, areaM2 * crop.highGPerM2Day);
    }
}
