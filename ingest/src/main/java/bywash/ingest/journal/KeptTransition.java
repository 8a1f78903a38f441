package bywash.ingest.journal;

import java.time.Instant;

/**
 * One alarm's change as the journal keeps it.
 *
 * @param json the alarm line
 * @param kind the alarm's word
 * @param state what a restart needs to know of the alarm; replaces what was kept of it
 * @param incident id of the incident whose response sheet it belongs to; empty where it is on none
 */
public record KeptTransition(Instant at, String json, String kind, String subject, String state, String incident) {
    /** One that is on no response sheet. */
    public KeptTransition(Instant at, String json, String kind, String subject, String state) {
        this(at, json, kind, subject, state, "");
    }
}
