package bywash.tui.watch;

import bywash.ingest.metrics.WatchMetrics;
import bywash.ingest.mqtt.InboundQueue;
import bywash.rules.alarm.AlarmState;
import io.micrometer.core.instrument.MeterRegistry;

/** Gives the figures of a watch to a registry. */
public final class Metering {
    private Metering() {}

    /** To be called before the loop starts. */
    public static void of(Station station, MeterRegistry registry) {
        WatchMetrics metrics = new WatchMetrics(registry);
        LiveWatch watch = station.watch();
        InboundQueue queue = station.queue();
        WatchRecord record = station.record();
        metrics.counter("messages", "Messages received", queue::received);
        metrics.drops("queue-full", () -> queue.counts().dropped());
        metrics.drops("too-long", () -> queue.counts().oversize());
        metrics.drops("topic-rate", queue::overTopic);
        metrics.drops("day-cap", queue::overDay);
        metrics.counter(
                "late",
                "Readings that came too late to be put in order",
                () -> watch.latest().late());
        metrics.counter("faults", "Faults of ours in the rules", watch::faults);
        metrics.counter("journal.writes", "Lines and minutes kept in the journal", record::kept);
        metrics.counter(
                "journal.unkept", "Lines and minutes given up because the journal could not keep them", record::unkept);
        for (AlarmState state : AlarmState.values()) {
            if (state != AlarmState.NORMAL) {
                metrics.alarms(
                        state.word(),
                        () -> watch.latest().snapshot().alarms().stream()
                                .filter(a -> a.state() == state)
                                .count());
            }
        }
        watch.measure(metrics);
    }
}
