package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bywash.ingest.mqtt.Backoff;
import bywash.ingest.mqtt.FeedSetup;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.BrokerSettings;
import bywash.tui.demo.LoopbackBroker;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The one jar that is handed out, run by the Java that builds it: what packing changes is seen nowhere else. Runs after
 * packing; its path is given as {@code bywash.jar}.
 */
class PackedJarTest {
    private static final Path SITES = Path.of("..", "sample-feeds", "sites");

    @TempDir
    Path dir;

    private Process run(String... words) throws IOException {
        String jar = System.getProperty("bywash.jar");
        assumeTrue(jar != null && Files.isRegularFile(Path.of(jar)), "not packed yet");
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", jar));
        command.addAll(List.of(words));
        return started(command.toArray(String[]::new));
    }

    private Process started(String... command) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(dir.resolve("out").toFile())
                .redirectError(dir.resolve("err").toFile());
        builder.environment().put("XDG_STATE_HOME", dir.toString());
        return builder.start();
    }

    private String err() throws IOException {
        return Files.readString(dir.resolve("err"), StandardCharsets.UTF_8);
    }

    /** Newer JDKs warn on standard error of native access and of {@code sun.misc.Unsafe}. */
    @Test
    @Timeout(120)
    void aWatchThatReadsAndPublishesSaysNothingOnStandardError() throws Exception {
        try (LoopbackBroker broker = new LoopbackBroker()) {
            Path site = Files.writeString(
                    dir.resolve("larkfield.yaml"),
                    Files.readString(SITES.resolve("larkfield.yaml"))
                            .replaceAll("mqtt://[0-9.:]+", broker.url().toString()));
            InboundQueue heard = new InboundQueue();
            FeedSetup setup =
                    FeedSetup.of(BrokerSettings.at(broker.url()), "test", "ear", List.of("bywash/larkfield/watch"));
            Process watch = run("watch", "--headless", "--publish", "--site", site.toString());
            try (MqttFeed ear =
                    new MqttFeed(setup, heard, InstantSource.system(), Backoff.USUAL, state -> {}).start()) {
                List<RecordedLine.Message> beats = new ArrayList<>();
                while (beats.isEmpty()) {
                    assertTrue(watch.isAlive(), err());
                    heard.drain(beats::add, 1, Duration.ofMillis(200));
                }
                String beat = new String(beats.get(0).payload(), StandardCharsets.UTF_8);
                assertTrue(beat.contains("\"running\""), beat);
                watch.destroy();
                assertEquals(143, watch.waitFor());
                assertEquals("", err());
            } finally {
                watch.destroyForcibly();
            }
        }
    }

    /** Installed as the unit's head says, and called by a link to it. */
    @Test
    @Timeout(60)
    void theCommandFindsItsJarAndHandsOnWordsAndCodes() throws Exception {
        String jar = System.getProperty("bywash.jar");
        assumeTrue(jar != null && Files.isRegularFile(Path.of(jar)), "not packed yet");
        Path bin = Files.createDirectories(dir.resolve("local dir/bin"));
        Path lib = Files.createDirectories(dir.resolve("local dir/lib"));
        Files.copy(Path.of("bywash"), bin.resolve("bywash"), StandardCopyOption.COPY_ATTRIBUTES);
        Files.createSymbolicLink(lib.resolve("bywash.jar"), Path.of(jar).toAbsolutePath());
        Path link = Files.createSymbolicLink(dir.resolve("bywash"), bin.resolve("bywash"));
        for (String command : List.of("watch", "replay", "check")) {
            Process process = started(link.toString(), command, "--none");
            assertEquals(ExitCode.USAGE, process.waitFor());
            assertTrue(err().contains("bywash " + command + " --help"), err());
        }
        Process process = started(link.toString(), "--version");
        assertEquals(0, process.waitFor());
        assertEquals(Main.VERSION, Files.readString(dir.resolve("out")).strip());
    }

    @Test
    @Timeout(60)
    void aReplayGivesItsAlarmLinesAndNothingElse() throws Exception {
        Process replay = run(
                "replay",
                "--headless",
                "--site",
                SITES.resolve("larkfield.yaml").toString(),
                SITES.resolve("../recordings/valve-open.jsonl.gz").toString());
        assertEquals(0, replay.waitFor());
        assertEquals("", err());
        assertTrue(Files.readString(dir.resolve("out")).contains("unplanned-inflow"), "no alarm line");
    }
}
