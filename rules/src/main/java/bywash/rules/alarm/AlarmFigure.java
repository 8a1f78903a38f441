package bywash.rules.alarm;

/**
 * One figure of how well the alarms serve, beside the mark it is held against.
 *
 * @param what in words
 * @param value NaN where it cannot be told
 * @param most the most that it should be; NaN where none is given
 * @param decimals it is shown with
 * @param source of the mark; empty without one
 */
public record AlarmFigure(String what, double value, double most, int decimals, String source) {

    /** How it stands to its mark. */
    public enum Verdict {
        MET,
        MISSED,
        /** There is no mark, or nothing to hold against it. */
        OPEN
    }

    public Verdict verdict() {
        if (Double.isNaN(value) || Double.isNaN(most)) {
            return Verdict.OPEN;
        }
        return value <= most ? Verdict.MET : Verdict.MISSED;
    }
}
