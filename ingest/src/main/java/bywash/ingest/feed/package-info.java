/**
 * Event time: orders readings within the lateness bound and makes the ticks. The only place that reads a clock.
 */
@NullMarked
package bywash.ingest.feed;

import org.jspecify.annotations.NullMarked;
