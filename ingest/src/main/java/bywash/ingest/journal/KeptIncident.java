package bywash.ingest.journal;

import org.jspecify.annotations.Nullable;

/**
 * An incident of the response sheets as the journal keeps it, beside its alarm lines.
 *
 * @param seq place of its first alarm line in the record
 * @param json what readings added to it; null where none were kept
 */
public record KeptIncident(long seq, String id, @Nullable String json) {}
