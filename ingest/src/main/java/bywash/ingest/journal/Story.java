package bywash.ingest.journal;

import bywash.rules.event.OperatorEntry;

/** Is told alarm lines and entries in the order in which they were stored. */
public interface Story {
    /** @param line as it was shown */
    void changed(String line);

    void entered(OperatorEntry entry);
}
