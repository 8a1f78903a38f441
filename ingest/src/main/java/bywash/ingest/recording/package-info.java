/**
 * Recordings: JSON Lines, plain or gzip, written and read line by line. A broken line is reported and skipped.
 * Sees rules.event, and the units of ingest.site; nothing of payloads.
 */
@NullMarked
package bywash.ingest.recording;

import org.jspecify.annotations.NullMarked;
