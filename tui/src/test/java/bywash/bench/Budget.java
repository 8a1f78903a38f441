package bywash.bench;

import java.util.Locale;

/** One figure beside its budget, as a row of the table that a benchmark prints. A miss is printed, not failed. */
public final class Budget {
    private Budget() {}

    /** The figure should be at most the budget. */
    public static void most(String what, double figure, double budget, String unit) {
        print(what, figure, budget, unit, "at most", figure <= budget);
    }

    /** The figure should be at least the budget. */
    static void least(String what, double figure, double budget, String unit) {
        print(what, figure, budget, unit, "at least", figure >= budget);
    }

    /** A figure that has no budget of its own. */
    public static void note(String what, double figure, String unit) {
        System.out.printf(Locale.ROOT, "| %-66s | %12s %-8s | %20s | %-4s |%n", what, text(figure), unit, "", "");
    }

    static void said(String words) {
        System.out.println("| " + words);
    }

    private static void print(String what, double figure, double budget, String unit, String side, boolean held) {
        System.out.printf(
                Locale.ROOT,
                "| %-66s | %12s %-8s | %8s %11s | %-4s |%n",
                what,
                text(figure),
                unit,
                side,
                text(budget),
                held ? "held" : "MISS");
    }

    private static String text(double value) {
        double size = Math.abs(value);
        return String.format(Locale.ROOT, size >= 1000 ? "%,.0f" : size >= 10 ? "%.1f" : "%.3f", value);
    }
}
