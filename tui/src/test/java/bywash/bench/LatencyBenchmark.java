package bywash.bench;

import bywash.ingest.mqtt.MqttPublisher;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From the moment at which an alarm can be decided to its line, journal written, over a real broker. The waits that are
 * meant (an alarm's own on-delay, the 2 s in which readings are put in order) end at that moment. A hundred probes a second;
 * their alarms fall due on the ticks, every five seconds some sixteen at once.
 */
class LatencyBenchmark {
    private static final int PROBES = 100;
    private static final long DROP_EVERY_MS = 300;
    private static final Duration PATIENCE = Duration.ofSeconds(90);
    private static final Duration PUT_IN_ORDER = Duration.ofSeconds(2);

    @TempDir
    Path dir;

    @Test
    void toTheAlarmLine() throws Exception {
        if (!BenchBroker.installed()) {
            Budget.said("latency: not measured, for want of Mosquitto");
            return;
        }
        try (BenchBroker broker = new BenchBroker(dir)) {
            double[] ms = measure(broker.port);
            Budget.note("alarm lines whose latency was measured", ms.length, "");
            Budget.note("due to alarm line, journal written, median", ms[ms.length / 2], "ms");
            Budget.most("due to alarm line, journal written, p99", ms[(ms.length * 99 - 1) / 100], 50, "ms");
        }
    }

    private double[] measure(int port) throws Exception {
        SiteFile file = ManyProbes.site(port, PROBES);
        List<Double> ms = new ArrayList<>();
        CountDownLatch all = new CountDownLatch(PROBES);
        try (BenchWatch watch = new BenchWatch(file, dir.resolve("state"))) {
            watch.station.outlets().add((transition, line) -> {
                if (transition.kind() == AlarmKind.LOW_OXYGEN && transition.state() == AlarmState.UNACKNOWLEDGED) {
                    Instant due = transition.at().plus(PUT_IN_ORDER);
                    ms.add(Duration.between(due, watch.clock.instant()).toNanos() / 1e6);
                    all.countDown();
                }
            });
            watch.start();
            publish(port, all);
        }
        return ms.stream().mapToDouble(d -> d).sorted().toArray();
    }

    private static void publish(int port, CountDownLatch all) throws Exception {
        long start = System.nanoTime();
        try (MqttPublisher publisher = new MqttPublisher(URI.create("mqtt://127.0.0.1:" + port))) {
            for (int n = 0; all.getCount() > 0; n++) {
                long ms = (System.nanoTime() - start) / 1_000_000;
                if (ms > PATIENCE.toMillis()) {
                    throw new IllegalStateException(all.getCount() + " alarms were never raised");
                }
                int probe = n % PROBES;
                String value = ms / DROP_EVERY_MS >= probe ? "2." + n / PROBES % 10 : "7." + n / PROBES % 10;
                publisher.publish(ManyProbes.topic(probe), value.getBytes(StandardCharsets.US_ASCII));
                LockSupport.parkNanos(Math.max(0, start + n * 10_000_000L - System.nanoTime()));
            }
        }
    }
}
