package bywash.bench;

import bywash.ingest.mqtt.MqttPublisher;
import bywash.ingest.site.SiteFile;
import bywash.tui.watch.Station;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Live: messages a second of a hundred probes held without loss, journal and all, beside the broker's own subscriber in the same run. */
class LiveBenchmark {
    private static final int PER_SECOND = 20_000;
    private static final int SECONDS = 10;
    private static final int PROBES = 100;
    private static final int TOTAL = PER_SECOND * SECONDS;
    private static final Path SUBSCRIBER = Path.of("/usr/bin/mosquitto_sub");

    @TempDir
    Path dir;

    @Test
    void heldWithoutLoss() throws Exception {
        if (!BenchBroker.installed() || !Files.isExecutable(SUBSCRIBER)) {
            Budget.said("live throughput: not measured, for want of Mosquitto and its clients");
            return;
        }
        try (BenchBroker broker = new BenchBroker(dir)) {
            Path counted = dir.resolve("subscriber.out");
            Process subscriber = new ProcessBuilder(
                            SUBSCRIBER.toString(), "-p", Integer.toString(broker.port), "-t", "bench/#", "-F", "1")
                    .redirectOutput(counted.toFile())
                    .start();
            try {
                measure(broker.port, counted);
            } finally {
                subscriber.destroy();
            }
        }
    }

    private void measure(int port, Path counted) throws Exception {
        SiteFile file = ManyProbes.site(port, PROBES, 1);
        try (BenchWatch watch = new BenchWatch(file, dir.resolve("state"))) {
            watch.start();
            Station station = watch.station;
            double seconds = publish(port);
            settle(station);
            var counts = station.queue().counts();
            long theirs = Files.size(counted) / 2;
            Budget.note("live: published over a real broker", TOTAL / seconds, "msg/s");
            Budget.most(
                    "live: messages lost of " + TOTAL,
                    TOTAL - (counts.received() - station.queue().dropped()),
                    0,
                    "");
            Budget.note(
                    "live: taken, over what the broker's own subscriber took",
                    counts.received() / (double) theirs,
                    "times");
        }
    }

    private static double publish(int port) throws Exception {
        byte[] payload = "7.5".getBytes(StandardCharsets.US_ASCII);
        long start = System.nanoTime();
        try (MqttPublisher publisher = new MqttPublisher(URI.create("mqtt://127.0.0.1:" + port))) {
            for (int i = 0; i < TOTAL; i++) {
                publisher.publish(ManyProbes.topic(i % PROBES), payload);
                long ahead = start + i * 1_000_000_000L / PER_SECOND - System.nanoTime();
                if (ahead > 1_000_000) {
                    LockSupport.parkNanos(ahead);
                }
            }
        }
        return (System.nanoTime() - start) / 1e9;
    }

    /** Waits until nothing more comes, for up to half a minute. */
    private static void settle(Station station) {
        long end = System.nanoTime() + 30_000_000_000L;
        long before = -1;
        while (System.nanoTime() < end) {
            var counts = station.queue().counts();
            if (counts.received() >= TOTAL || (counts.received() == before && counts.waiting() == 0)) {
                return;
            }
            before = counts.received();
            LockSupport.parkNanos(2_000_000_000L);
        }
    }
}
