package bywash.ingest.recording;

import bywash.rules.event.OperatorEntry;
import java.time.Instant;

/** One line of a recording: a message as received, what the grower entered, or how the feed or the watch itself stood. */
public sealed interface RecordedLine {
    /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
    enum Kind {
        MESSAGE,
        ENTRY,
        FEED,
        WATCH_STARTED
    }

    Kind kind();

    Instant time();

    /** The payload array is not copied; nobody changes it. */
    record Message(Instant time, String topic, byte[] payload, int qos, boolean retain) implements RecordedLine {
        @Override
        public Kind kind() {
            return Kind.MESSAGE;
        }
    }

    record Entry(OperatorEntry entry) implements RecordedLine {
        @Override
        public Kind kind() {
            return Kind.ENTRY;
        }

        @Override
        public Instant time() {
            return entry.at();
        }
    }

    /**
     * The feed was lost or came back: {@code {"time":...,"feed":"lost","detail":"..."}}.
     *
     * @param detail what is known of it, in words
     */
    record Feed(Instant time, boolean up, String detail) implements RecordedLine {
        @Override
        public Kind kind() {
            return Kind.FEED;
        }
    }

    /**
     * A watch began at {@code time}: {@code {"time":...,"watch":"started","unwatched-since":...}}.
     *
     * @param unwatchedSince how far the one before had come
     */
    record WatchStarted(Instant time, Instant unwatchedSince) implements RecordedLine {
        @Override
        public Kind kind() {
            return Kind.WATCH_STARTED;
        }
    }
}
