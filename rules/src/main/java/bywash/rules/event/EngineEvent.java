package bywash.rules.event;

import java.time.Instant;

/** Everything the engine can be told. The kind is closed; time only comes in here. */
public sealed interface EngineEvent {
    Instant at();

    /** A reading came in. */
    record ReadingArrived(Reading reading) implements EngineEvent {
        @Override
        public Instant at() {
            return reading.at();
        }
    }

    /** A payload on a probe's topic could not become a reading; {@code reason} says why in words. */
    record ReadingRefused(String probe, Instant at, String reason) implements EngineEvent {}

    /** Event time reached {@code at}, a whole multiple of 5 s. */
    record Tick(Instant at) implements EngineEvent {}

    /** The grower entered something. */
    record OperatorActed(OperatorEntry entry) implements EngineEvent {
        @Override
        public Instant at() {
            return entry.at();
        }
    }

    /** The feed was lost or came back; {@code detail} says what is known. */
    record FeedChanged(Instant at, boolean up, String detail) implements EngineEvent {}

    /** A watch began; since {@code unwatchedSince} none had run, so that what no probe said meanwhile is no silence. */
    record WatchStarted(Instant at, Instant unwatchedSince) implements EngineEvent {}
}
