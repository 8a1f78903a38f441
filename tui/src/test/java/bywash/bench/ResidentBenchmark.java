package bywash.bench;

import bywash.ingest.mqtt.MqttPublisher;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Memory and processor of a watch without a screen, seven probes every 10 s, over a real broker for two minutes. */
class ResidentBenchmark {
    private static final int ROUNDS = 12;
    private static final List<String> USUAL = List.of();
    /** As the service unit starts it. */
    private static final List<String> SMALL =
            List.of("-XX:+UseSerialGC", "-Xms8m", "-Xmx64m", "-XX:TieredStopAtLevel=1");

    @TempDir
    Path dir;

    @Test
    void memoryAndProcessor() throws Exception {
        if (!BenchBroker.installed()) {
            Budget.said("memory and processor of the watch: not measured, for want of Mosquitto");
            return;
        }
        try (BenchBroker broker = new BenchBroker(dir)) {
            measure("as java -jar starts it", USUAL, broker.port);
            measure("with the unit's " + String.join(" ", SMALL), SMALL, broker.port);
        }
    }

    private void measure(String how, List<String> options, int port) throws Exception {
        Path site = Program.site(dir, port);
        Path state = Files.createTempDirectory(dir, "state");
        Process watch = new ProcessBuilder(Program.java(
                        options, "watch", "--headless", "--site", site.toString(), "--state", state.toString()))
                .redirectErrorStream(true)
                .redirectOutput(dir.resolve("watch.log").toFile())
                .start();
        try (MqttPublisher publisher = new MqttPublisher(java.net.URI.create("mqtt://127.0.0.1:" + port))) {
            round(publisher, 0);
            double before = 0;
            for (int i = 1; i <= ROUNDS; i++) {
                pause();
                round(publisher, i);
                if (i == ROUNDS / 2) {
                    before = processorSeconds(watch.pid());
                }
            }
            double used = processorSeconds(watch.pid()) - before;
            Budget.most("resident memory of the watch, " + how, residentMb(watch.pid()), 100, "MB");
            Budget.most("processor of one core, " + how, 100 * used / (10 * ROUNDS / 2.0), 1.5, "%");
        } finally {
            watch.destroy();
            watch.waitFor();
        }
    }

    private static void round(MqttPublisher publisher, int i) {
        send(publisher, "sump/level", Double.toString(34 + i % 3 * 0.1));
        send(publisher, "reserve/level", "73.4");
        send(
                publisher,
                "fish",
                "[{\"n\":\"ph\",\"v\":6.7,\"u\":\"pH\"},{\"n\":\"temperature\",\"v\":22.1,\"u\":\"Cel\"}]");
        send(publisher, "do", "{\"oxygen\":{\"mgl\":7.8}}");
        send(publisher, "orp", "318");
        send(publisher, "pump", "on");
    }

    private static void send(MqttPublisher publisher, String topic, String payload) {
        publisher.publish("larkfield/" + topic, payload.getBytes(StandardCharsets.UTF_8));
    }

    /** Real seconds are what is measured here: a benchmark, not a test. */
    private static void pause() throws InterruptedException {
        if (new CountDownLatch(1).await(10, TimeUnit.SECONDS)) {
            throw new IllegalStateException("nobody counts down");
        }
    }

    private static double processorSeconds(long pid) throws IOException {
        String stat = Files.readString(Path.of("/proc/" + pid + "/stat"), StandardCharsets.UTF_8);
        String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
        return (Long.parseLong(fields[11]) + Long.parseLong(fields[12])) / 100.0;
    }

    private static double residentMb(long pid) throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc/" + pid + "/status"))) {
            if (line.startsWith("VmRSS:")) {
                return Long.parseLong(line.replaceAll("\\D+", "")) / 1024.0;
            }
        }
        throw new IOException("no resident memory told for " + pid);
    }
}
