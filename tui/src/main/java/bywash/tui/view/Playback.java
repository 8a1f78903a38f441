package bywash.tui.view;

import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/**
 * Where a replay stands.
 *
 * @param state what it is doing
 * @param speed times real time; infinite plays without waiting
 * @param from time of the first line
 * @param at how far it has come
 * @param to time of the last line
 */
public record Playback(State state, double speed, Instant from, Instant at, Instant to) {

    /** What a replay can be doing. */
    public enum State {
        PLAYING("playing"),
        PAUSED("paused"),
        SEEKING("looking for the next alarm"),
        ENDED("ended");

        private final String word;

        State(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** What the grower can ask of it. */
    public enum Command {
        PAUSE,
        FASTER,
        SLOWER,
        STEP,
        NEXT_ALARM
    }

    /** How far, 0 to 1. */
    public double share() {
        long whole = Duration.between(from, to).toMillis();
        double share = whole == 0 ? 1 : Duration.between(from, at).toMillis() / (double) whole;
        return Math.max(0, Math.min(1, share));
    }

    /** Such as {@code 60x}. */
    public String pace() {
        return Double.isInfinite(speed) ? "max" : String.format(Locale.ROOT, "%.0fx", speed);
    }

    /** For the top line. */
    public String words() {
        int percent = (int) Math.floor(share() * 100);
        return switch (state) {
            case PLAYING -> "replay " + pace() + ", " + percent + " %";
            case PAUSED -> "replay PAUSED, " + percent + " %";
            case SEEKING -> "replay to next alarm, " + percent + " %";
            case ENDED -> "replay ended";
        };
    }
}
