/**
 * Counters through Micrometer.
 */
@NullMarked
package bywash.ingest.metrics;

import org.jspecify.annotations.NullMarked;
