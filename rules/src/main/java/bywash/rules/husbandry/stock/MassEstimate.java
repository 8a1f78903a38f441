package bywash.rules.husbandry.stock;

/**
 * The mean mass of a cohort now, with its range.
 *
 * @param evidence what it rests on, in words
 */
public record MassEstimate(double lowG, double likelyG, double highG, String evidence) {
    public MassEstimate {
        if (!(lowG >= 0 && lowG <= likelyG && likelyG <= highG)) {
            throw new IllegalArgumentException("estimate " + lowG + " " + likelyG + " " + highG + " is not in order");
        }
    }

    /** The same for a number of fish. */
    public MassEstimate times(int count) {
        return new MassEstimate(lowG * count, likelyG * count, highG * count, evidence);
    }
}
