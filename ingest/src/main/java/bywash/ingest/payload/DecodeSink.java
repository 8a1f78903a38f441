package bywash.ingest.payload;

import bywash.rules.event.Reading;
import java.time.Instant;

/** Takes what decoding a message gives. */
public interface DecodeSink {
    void reading(Reading reading);

    /** A payload on a probe's topic that could not become a reading; {@code reason} is a short plain sentence. */
    void refused(String probeId, Instant at, String reason);

    /** A message on a topic that no probe has. */
    void unknownTopic(String topic);
}
