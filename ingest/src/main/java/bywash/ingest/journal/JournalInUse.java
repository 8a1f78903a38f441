package bywash.ingest.journal;

import java.io.IOException;

/** Another watch writes this journal. The message is for the grower. */
public final class JournalInUse extends IOException {
    private static final long serialVersionUID = 1L;

    JournalInUse(String message) {
        super(message);
    }
}
