package bywash.ingest.recording;

import bywash.rules.event.OperatorEntry;
import java.time.Instant;

/** One line of a recording: a message as received, or what the grower entered. */
public sealed interface RecordedLine {
    Instant time();

    /** The payload array is not copied; nobody changes it. */
    record Message(Instant time, String topic, byte[] payload, int qos, boolean retain) implements RecordedLine {}

    record Entry(OperatorEntry entry) implements RecordedLine {
        @Override
        public Instant time() {
            return entry.at();
        }
    }
}
