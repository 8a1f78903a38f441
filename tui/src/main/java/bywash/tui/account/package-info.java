/**
 * What happened in a span of time, gathered from a journal or from recordings: alarms, entries, water that moved, residual,
 * readings, times that nobody watched. Data for reports; sees the pipeline and the journal, no screen and no text.
 */
@NullMarked
package bywash.tui.account;

import org.jspecify.annotations.NullMarked;
