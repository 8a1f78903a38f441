package bywash.rules.event;

import java.time.Instant;

/** Everything the engine can be told. The kind is closed; time only comes in here. */
public sealed interface EngineEvent {
    /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
    enum Kind {
        READING_ARRIVED,
        READING_REFUSED,
        TICK,
        OPERATOR_ACTED,
        FEED_CHANGED,
        WATCH_STARTED
    }

    Kind kind();

    Instant at();

    /** A reading came in. */
    record ReadingArrived(Reading reading) implements EngineEvent {
        @Override
        public Kind kind() {
            return Kind.READING_ARRIVED;
        }

        @Override
        public Instant at() {
            return reading.at();
        }
    }

    /** A payload on a probe's topic could not become a reading; {@code reason} says why in words. */
    record ReadingRefused(String probe, Instant at, String reason) implements EngineEvent {
        @Override
        public Kind kind() {
            return Kind.READING_REFUSED;
        }
    }

    /** Event time reached {@code at}, a whole multiple of 5 s. */
    record Tick(Instant at) implements EngineEvent {
        @Override
        public Kind kind() {
            return Kind.TICK;
        }
    }

    /** The grower entered something. */
    record OperatorActed(OperatorEntry entry) implements EngineEvent {
        @Override
        public Kind kind() {
            return Kind.OPERATOR_ACTED;
        }

        @Override
        public Instant at() {
            return entry.at();
        }
    }

    /** The feed was lost or came back; {@code detail} says what is known. */
    record FeedChanged(Instant at, boolean up, String detail) implements EngineEvent {
        @Override
        public Kind kind() {
            return Kind.FEED_CHANGED;
        }
    }

    /** A watch began; since {@code unwatchedSince} none had run, so that what no probe said meanwhile is no silence. */
    record WatchStarted(Instant at, Instant unwatchedSince) implements EngineEvent {
        @Override
        public Kind kind() {
            return Kind.WATCH_STARTED;
        }
    }
}
