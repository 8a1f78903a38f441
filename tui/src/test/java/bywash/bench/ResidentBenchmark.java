package bywash.bench;

import bywash.ingest.mqtt.MqttPublisher;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Memory and processor of a watch without a screen, seven probes every 10 s, over a real broker. A watch runs for months, so the
 * budgets are held against its fifth and sixth minute; the second, in which code is still compiled, is noted.
 */
class ResidentBenchmark {
    private static final int ROUNDS_A_MINUTE = 6;
    private static final int MINUTES = 6;

    @TempDir
    Path dir;

    @Test
    void memoryAndProcessor() throws Exception {
        if (!BenchBroker.installed()) {
            Budget.said("memory and processor of the watch: not measured, for want of Mosquitto");
            return;
        }
        try (BenchBroker broker = new BenchBroker(dir);
                Watched usual = new Watched(
                        "as java -jar starts it",
                        broker.port,
                        words -> new ProcessBuilder(Program.java(List.of(), words.toArray(String[]::new))));
                Watched small = new Watched("as bywash watch and the unit start it", broker.port, Program::script);
                MqttPublisher publisher = new MqttPublisher(java.net.URI.create("mqtt://127.0.0.1:" + broker.port))) {
            round(publisher, 0);
            for (int i = 1; i <= ROUNDS_A_MINUTE * MINUTES; i++) {
                pause();
                round(publisher, i);
                if (i % ROUNDS_A_MINUTE == 0) {
                    usual.minute();
                    small.minute();
                }
            }
            usual.print();
            small.print();
        }
    }

    /** A watch as a process, looked at once a minute. */
    private final class Watched implements AutoCloseable {
        private final String how;
        private final Process process;
        private final List<Double> residentMb = new ArrayList<>();
        private final List<Double> processorS = new ArrayList<>();

        Watched(String how, int port, Function<List<String>, ProcessBuilder> start) throws IOException {
            this.how = how;
            Path site = Program.site(dir, port);
            Path state = Files.createTempDirectory(dir, "state");
            process = start.apply(
                            List.of("watch", "--headless", "--site", site.toString(), "--state", state.toString()))
                    .redirectErrorStream(true)
                    .redirectOutput(state.resolve("watch.log").toFile())
                    .start();
        }

        void minute() throws IOException {
            residentMb.add(ResidentBenchmark.residentMb(process.pid()));
            processorS.add(processorSeconds(process.pid()));
        }

        /** Per cent of one core between the ends of two minutes, counted from one. */
        private double processor(int from, int to) {
            return 100 * (processorS.get(to - 1) - processorS.get(from - 1)) / (60.0 * (to - from));
        }

        void print() {
            Budget.most("resident memory of the watch, " + how, residentMb.get(MINUTES - 1), 100, "MB");
            Budget.note("the same after two minutes", residentMb.get(1), "MB");
            Budget.most("processor of one core, fifth and sixth minute, " + how, processor(4, MINUTES), 1.5, "%");
            Budget.note("the same in the second minute", processor(1, 2), "%");
        }

        @Override
        public void close() throws InterruptedException {
            process.destroy();
            process.waitFor();
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
