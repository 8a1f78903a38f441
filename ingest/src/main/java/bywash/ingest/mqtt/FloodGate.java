package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine.Message;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Keeps a publisher who sends far more than the site file declares from filling memory and disk. What is over the limits is
 * dropped here, before anything is kept of it, so that a replay sees what the rules saw; what is let through is spread over
 * the time of the flood. Twice what a topic declares always passes, however much others send. Topics that the site file does
 * not name share one limit. Time is that of the messages. For one thread at a time.
 */
final class FloodGate {
    /** Why a message was dropped. */
    enum Reason {
        /** Too much on its topic. */
        TOPIC,
        /** Too much in all, today. */
        DAY
    }

    private static final int OVERHEAD = 40;
    private static final double SHARE = 2;
    private static final double SHARE_AT_ONCE = 60;
    private static final Duration WINDOW = Duration.ofSeconds(10);
    private static final Duration TELL = Duration.ofMinutes(1);
    private static final double DAY_S = 86_400;

    private final FloodLimits limits;
    private final Map<String, Source> sources = new HashMap<>();
    private final TokenBucket day;
    private long overTopic;
    private long overDay;

    FloodGate(FloodLimits limits) {
        this.limits = limits;
        this.day = new TokenBucket(limits.bytesADay(), limits.bytesADay() / DAY_S);
    }

    /** One topic, or all that nobody declared. */
    private final class Source {
        private final String name;
        private final TokenBucket share;
        private final TokenBucket own;
        private Instant windowFrom = Instant.MIN;
        private long came;
        private long passed;
        private double camePerS;
        private double passedPerS;
        private @Nullable Instant lastDrop;

        Source(String topic) {
            boolean declared = limits.declaredPerSecond().containsKey(topic);
            name = declared ? topic : "topics of no probe";
            share = new TokenBucket(declared ? SHARE_AT_ONCE : 0, SHARE * limits.declared(topic));
            own = new TokenBucket(limits.atOnce(topic), limits.perSecond(topic));
        }

        @Nullable
        Reason judge(Message m) {
            Instant now = m.time();
            int parts = 1 + m.payload().length / FloodLimits.PART;
            if (share.has(parts, now)) {
                share.take(parts);
                own.has(parts, now);
                return null;
            }
            if (!own.has(parts, now)) {
                return Reason.TOPIC;
            }
            int bytes = OVERHEAD + m.payload().length;
            if (!day.has(bytes, now)) {
                return Reason.DAY;
            }
            own.take(parts);
            day.take(bytes);
            return null;
        }

        void count(Instant now, boolean pass) {
            if (windowFrom == Instant.MIN) {
                windowFrom = now;
            }
            if (!now.isBefore(windowFrom.plus(WINDOW))) {
                double seconds = Duration.between(windowFrom, now).toMillis() / 1000.0;
                camePerS = came / seconds;
                passedPerS = passed / seconds;
                came = 0;
                passed = 0;
                windowFrom = now;
            }
            came++;
            passed += pass ? 1 : 0;
            lastDrop = pass ? lastDrop : now;
        }

        boolean floods(Instant now) {
            return lastDrop != null && now.isBefore(lastDrop.plus(TELL));
        }

        /** The last whole window; in the first of all, what came so far. */
        String words() {
            return camePerS == 0
                    ? came + " messages in " + WINDOW.toSeconds() + " s, " + passed + " let through"
                    : String.format(Locale.ROOT, "%.0f messages a second, %.1f let through", camePerS, passedPerS);
        }
    }

    /** Null where it may pass. */
    @Nullable
    Reason judge(Message message) {
        String key = limits.declaredPerSecond().containsKey(message.topic()) ? message.topic() : "";
        Source source = sources.computeIfAbsent(key, Source::new);
        Reason reason = source.judge(message);
        source.count(message.time(), reason == null);
        if (reason == Reason.TOPIC) {
            overTopic++;
        } else if (reason == Reason.DAY) {
            overDay++;
        }
        return reason;
    }

    /** Dropped so far. */
    long dropped(Reason reason) {
        return switch (reason) {
            case TOPIC -> overTopic;
            case DAY -> overDay;
        };
    }

    /** Who floods us, and how much; empty a minute after the last drop. */
    String words(Instant now) {
        Source worst = null;
        int others = -1;
        for (Source source : sources.values()) {
            if (source.floods(now)) {
                others++;
                worst = worst == null || source.camePerS > worst.camePerS ? source : worst;
            }
        }
        if (worst == null) {
            return "";
        }
        return "FLOOD on " + worst.name + ": " + worst.words() + (others == 0 ? "" : ", and " + others + " more topics")
                + "; find who sends it";
    }
}
