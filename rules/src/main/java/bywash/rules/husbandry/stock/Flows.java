package bywash.rules.husbandry.stock;

/** Masses that came and went, g, over a time. Deaths are at the mass they were thought to have. */
final class Flows {
    double feedG;
    double feedPerFishG;
    double inG;
    double outG;
    double deadG;

    void add(Flows other) {
        feedG += other.feedG;
        inG += other.inG;
        outG += other.outG;
        deadG += other.deadG;
    }

    /** Conversion between a mass at the start and one at the end. */
    FeedConversion conversion(double startG, double endG) {
        return new FeedConversion(feedG, endG - startG + outG - inG, deadG);
    }
}
