/**
 * Figures on the watch itself, kept with Micrometer, and an endpoint on loopback that a collector may read. Sees neither
 * the engine nor a screen: who knows a figure gives it.
 */
@NullMarked
package bywash.ingest.metrics;

import org.jspecify.annotations.NullMarked;
