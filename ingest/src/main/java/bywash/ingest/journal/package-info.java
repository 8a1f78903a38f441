/**
 * The durable record of a site: one SQLite file with messages, operator entries, alarm transitions and the minutes of each
 * probe. {@link bywash.ingest.journal.Journal} is for the one loop that writes; {@link bywash.ingest.journal.TrendHistory}
 * answers any thread with trends over days and months. Sees recordings and rules.event; never the engine or a screen.
 */
@NullMarked
package bywash.ingest.journal;

import org.jspecify.annotations.NullMarked;
