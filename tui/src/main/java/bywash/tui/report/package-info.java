/**
 * The report of the season: one replayed recording or journal gives blocks (words, tables, plots), which are written as Markdown, and
 * each table as a CSV file. Sees the rules through the pipeline; draws no screen.
 */
@NullMarked
package bywash.tui.report;

import org.jspecify.annotations.NullMarked;
