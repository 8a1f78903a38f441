package bywash.tui.command;

/** Replay speeds. */
final class Speeds {
    private Speeds() {}

    /** Times real time; infinite for {@code max}; NaN when it is no speed. */
    static double parse(String text) {
        if (text.equals("max")) {
            return Double.POSITIVE_INFINITY;
        }
        try {
            double times = Double.parseDouble(text);
            return times >= 0.1 && times <= 100_000 ? times : Double.NaN;
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
