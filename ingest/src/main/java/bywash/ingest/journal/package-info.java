/**
 * The durable record: what was received and entered, written so that it survives a kill.
 */
@NullMarked
package bywash.ingest.journal;

import org.jspecify.annotations.NullMarked;
