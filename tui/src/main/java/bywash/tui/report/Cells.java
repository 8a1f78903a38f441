package bywash.tui.report;

import bywash.ingest.text.PlainText;
import bywash.rules.text.Figures;

/** Cells of tables. A value that is not known is an empty cell, never a zero. */
final class Cells {
    private static final int LONGEST = 400;

    private Cells() {}

    static String number(double value, int decimals) {
        return Double.isFinite(value) ? Figures.of(value, decimals) : "";
    }

    static String count(long count) {
        return Long.toString(count);
    }

    /** What was typed in, made safe. */
    static String text(String text) {
        return PlainText.of(text, LONGEST);
    }
}
