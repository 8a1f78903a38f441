package bywash.tui.account;

import bywash.rules.alarm.AlarmTransition;
import java.io.IOException;
import java.time.Instant;
import java.util.List;

/** A record that accounts can be given of: a journal, or recordings. */
public interface Chronicle {
    /** From when to when it tells of anything. */
    record Reach(Instant from, Instant to) {}

    /**
     * How far it reaches.
     *
     * @throws IOException in words for the grower; also where it is empty
     */
    Reach reach() throws IOException;

    /** Every alarm line, oldest first. */
    List<AlarmTransition> transitions() throws IOException;

    /** What happened in a span; from inclusive, to exclusive. */
    Account account(Instant from, Instant to) throws IOException;

    /** Its name in messages, such as {@code the journal}. */
    String name();
}
