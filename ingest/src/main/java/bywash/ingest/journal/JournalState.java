package bywash.ingest.journal;

/**
 * Whether the journal keeps what it is given.
 *
 * @param durable false while it cannot; the watch then goes on in memory
 * @param brief what is wrong, or was done, in a few words for a head line; empty while all is well
 * @param detail what is wrong and what to do, or what was done; empty while all is well
 */
public record JournalState(boolean durable, String brief, String detail) {
    static final JournalState GOOD = new JournalState(true, "", "");
}
