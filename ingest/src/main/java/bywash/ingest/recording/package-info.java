/**
 * Recordings: JSON Lines, plain or gzip, written and read line by line. A broken line is reported and skipped.
 */
@NullMarked
package bywash.ingest.recording;

import org.jspecify.annotations.NullMarked;
