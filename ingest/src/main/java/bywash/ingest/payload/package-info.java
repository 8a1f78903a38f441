/**
 * Payload bytes into readings: number, SenML (RFC 8428), JSON pointer (RFC 6901). A payload is decoded or refused, never thrown.
 */
@NullMarked
package bywash.ingest.payload;

import org.jspecify.annotations.NullMarked;
