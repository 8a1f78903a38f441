package bywash.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One figure beside its budget, as a row of the table that a benchmark prints. A miss is printed, not failed. All rows stand
 * once more at the end, see {@link WholeTable}.
 */
public final class Budget {
    private static final String ROW = "| %-66s | %12s %-8s | %8s %11s | %-4s |";
    private static final List<String> ROWS = new ArrayList<>();

    private Budget() {}

    private static synchronized void row(String row) {
        ROWS.add(row);
        System.out.println(row);
    }

    /** Every row so far, under a head. */
    static synchronized void printAll() {
        if (ROWS.isEmpty()) {
            return;
        }
        System.out.println(String.format(Locale.ROOT, ROW, "what", "figure", "", "", "budget", ""));
        System.out.println("|---|---|---|---|");
        ROWS.forEach(System.out::println);
    }

    /** The figure should be at most the budget. */
    public static void most(String what, double figure, double budget, String unit) {
        print(what, figure, budget, unit, "at most", figure <= budget);
    }

    /** The figure should be at least the budget. */
    static void least(String what, double figure, double budget, String unit) {
        print(what, figure, budget, unit, "at least", figure >= budget);
    }

    /** The same for the table at the end alone, where the benchmark prints a table of its own. */
    public static synchronized void mostAtEnd(String what, double figure, double budget, String unit) {
        ROWS.add(row(what, figure, budget, unit, "at most", figure <= budget));
    }

    /** The same where the figure should be at least the budget. */
    public static synchronized void leastAtEnd(String what, double figure, double budget, String unit) {
        ROWS.add(row(what, figure, budget, unit, "at least", figure >= budget));
    }

    /** A figure that has no budget of its own. */
    public static void note(String what, double figure, String unit) {
        row(String.format(Locale.ROOT, ROW, what, text(figure), unit, "", "", ""));
    }

    static void said(String words) {
        row("| " + words + " |");
    }

    private static void print(String what, double figure, double budget, String unit, String side, boolean held) {
        row(row(what, figure, budget, unit, side, held));
    }

    private static String row(String what, double figure, double budget, String unit, String side, boolean held) {
        return String.format(Locale.ROOT, ROW, what, text(figure), unit, side, text(budget), held ? "held" : "MISS");
    }

    private static String text(double value) {
        double size = Math.abs(value);
        return String.format(Locale.ROOT, size >= 1000 ? "%,.0f" : size >= 10 ? "%.1f" : "%.3f", value);
    }
}
