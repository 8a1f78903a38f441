package bywash.ingest.mqtt;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** A real Mosquitto in a folder of its own; the test is skipped, and says so, where none is installed. */
final class Mosquitto implements AutoCloseable {
    private final Path conf;
    final int port;
    private Process process;

    /**
     * Starts one on a free port.
     *
     * @param settings lines of its configuration beside the listener
     */
    Mosquitto(Path dir, String settings) throws Exception {
        Path program = program("mosquitto");
        port = MqttFeedTest.freePort();
        conf = dir.resolve("mosquitto.conf");
        // started by root it would drop to a user that cannot read the test's folder
        String user = "root".equals(System.getProperty("user.name")) ? "user root\n" : "";
        Files.writeString(conf, "listener " + port + " 127.0.0.1\nlog_dest stderr\n" + user + settings + "\n");
        process = run(program);
    }

    static Path program(String name) {
        return Stream.of("/usr/sbin", "/usr/bin", "/usr/local/sbin", "/usr/local/bin", "/opt/homebrew/sbin")
                .map(d -> Path.of(d, name))
                .filter(Files::isExecutable)
                .findFirst()
                .orElseGet(() -> Assumptions.abort("mosquitto is not installed: skipped"));
    }

    private Process run(Path program) throws IOException, InterruptedException {
        Process started = new ProcessBuilder(program.toString(), "-c", conf.toString())
                .redirectErrorStream(true)
                .start();
        CountDownLatch running = new CountDownLatch(1);
        StringBuffer said = new StringBuffer();
        Thread reader = new Thread(() -> {
            try (BufferedReader lines = started.inputReader(StandardCharsets.UTF_8)) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                    said.append(line).append('\n');
                    if (line.endsWith(" running")) {
                        running.countDown();
                    }
                }
            } catch (IOException e) {
                said.append(e);
            }
        });
        reader.setDaemon(true);
        reader.start();
        if (!running.await(10, TimeUnit.SECONDS)) {
            started.destroyForcibly();
            throw new AssertionError("mosquitto did not start: " + said);
        }
        return started;
    }

    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    void restart() throws IOException, InterruptedException {
        process = run(program("mosquitto"));
    }

    @Override
    public void close() throws InterruptedException {
        kill();
    }
}
