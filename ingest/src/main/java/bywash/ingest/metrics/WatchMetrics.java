package bywash.ingest.metrics;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.DoubleSupplier;
import java.util.function.LongSupplier;

/**
 * The figures of one watch, for as long as this is held.
 *
 * <pre>
 *   bywash.messages, .late, .journal.writes, .journal.unkept, .faults    counted since the start
 *   bywash.drops{reason}         messages dropped before they were read: queue-full, too-long, topic-rate, day-cap
 *   bywash.refused{reason}       payloads that gave no reading; reason without the values in it
 *   bywash.loop                  time of one round of the loop, s
 *   bywash.lag                   from the receipt of the last message to its end in the loop, s
 *   bywash.alarms{state}         alarms now
 * </pre>
 */
public final class WatchMetrics {
    /** Reasons told apart; all further ones count as "other". */
    private static final int MOST_REASONS = 40;

    private final MeterRegistry registry;
    private final Timer loop;
    private final Map<String, Counter> refused = new ConcurrentHashMap<>();
    /** A registry holds what it asks for counts only weakly: without this they would all turn to 0 in time. */
    private final List<LongSupplier> counted = new CopyOnWriteArrayList<>();

    private volatile double lagS;

    public WatchMetrics(MeterRegistry registry) {
        this.registry = registry;
        this.loop = Timer.builder("bywash.loop")
                .description("One round of the watch's loop")
                .register(registry);
        Gauge.builder("bywash.lag", this, m -> m.lagS)
                .description("From receipt to the end of the loop's round, of the last message")
                .baseUnit("seconds")
                .register(registry);
    }

    /** One round of the loop took so long. */
    public void loop(Duration took) {
        loop.record(took);
    }

    /** The last message waited and was worked on for so long. */
    public void lag(Duration lag) {
        lagS = lag.toNanos() / 1e9;
    }

    /** A payload gave no reading. */
    public void refused(String reason) {
        String kind = kind(reason);
        String name = refused.containsKey(kind) || refused.size() < MOST_REASONS ? kind : "other";
        refused.computeIfAbsent(
                        name,
                        n -> Counter.builder("bywash.refused")
                                .description("Payloads that gave no reading")
                                .tag("reason", n)
                                .register(registry))
                .increment();
    }

    /** A reason without what differs from payload to payload: quoted text and numbers. */
    static String kind(String reason) {
        String plain = reason.replaceAll("\"[^\"]*\"", "...").replaceAll("-?\\d[\\d.eE+-]*", "N");
        return plain.length() <= 100 ? plain : plain.substring(0, 100);
    }

    /** Messages dropped for a reason, as somebody else counts them. */
    public void drops(String reason, LongSupplier count) {
        counted.add(count);
        FunctionCounter.builder("bywash.drops", count, LongSupplier::getAsLong)
                .description("Messages dropped before they were read")
                .tag("reason", reason)
                .register(registry);
    }

    /** A figure that only grows and that somebody else counts. */
    public void counter(String name, String description, LongSupplier count) {
        counted.add(count);
        FunctionCounter.builder("bywash." + name, count, LongSupplier::getAsLong)
                .description(description)
                .register(registry);
    }

    /** A figure of now. */
    public void alarms(String state, DoubleSupplier count) {
        Gauge.builder("bywash.alarms", count::getAsDouble)
                .description("Alarms now")
                .tag("state", state)
                .register(registry);
    }
}
