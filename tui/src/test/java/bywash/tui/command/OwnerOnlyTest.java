package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole program in a process of its own: what it leaves on the disk is its owner's, and no password is seen anywhere. */
@Timeout(120)
@EnabledOnOs(OS.LINUX)
class OwnerOnlyTest {
    private static final String PASSWORD = "pike-perch-4711";

    @TempDir
    Path dir;

    /** With the broker on a port where nobody listens, and a password for it. */
    private Path site() throws IOException {
        Path secret = Files.writeString(dir.resolve("secret"), PASSWORD + "\n");
        String text = Files.readString(Path.of("../sample-feeds/sites/larkfield.yaml"))
                .replace(
                        "url: \"mqtt://127.0.0.1:1883\"",
                        "url: \"mqtt://127.0.0.1:9\", username: ann, password-file: " + secret);
        assertTrue(text.contains("password-file"), text);
        return Files.writeString(dir.resolve("site.yaml"), text);
    }

    private Process program(String umask, String... arguments) throws IOException {
        StringBuilder command = new StringBuilder("umask " + umask + "; exec ")
                .append(Path.of(System.getProperty("java.home"), "bin", "java"))
                .append(" -XX:TieredStopAtLevel=1 -cp '")
                .append(System.getProperty("java.class.path"))
                .append("' bywash.tui.command.Main");
        for (String argument : arguments) {
            command.append(" '").append(argument).append('\'');
        }
        ProcessBuilder builder = new ProcessBuilder("sh", "-c", command.toString())
                .redirectOutput(dir.resolve("out").toFile())
                .redirectError(dir.resolve("err").toFile());
        builder.environment().put("XDG_STATE_HOME", dir.resolve("home").toString());
        return builder.start();
    }

    private void run(String umask, String... arguments) throws Exception {
        Process process = program(umask, arguments);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), () -> said("err"));
    }

    private String said(String file) {
        try {
            return Files.readString(dir.resolve(file));
        } catch (IOException e) {
            return e.toString();
        }
    }

    private static void await(Path file) {
        while (!Files.exists(file)) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
        }
    }

    /** Rights of each file and folder under one, by its name. */
    private static Map<String, String> rights(Path folder) throws IOException {
        Map<String, String> rights = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted().toList()) {
                String name = folder.relativize(path).toString();
                if (name.startsWith("native/")) {
                    continue; // in a folder that is closed to others
                }
                rights.put(name, PosixFilePermissions.toString(Files.getPosixFilePermissions(path)));
            }
        }
        return rights;
    }

    @ParameterizedTest
    @ValueSource(strings = {"000", "077"})
    void whatAWatchLeavesIsItsOwnersAlone(String umask) throws Exception {
        Path site = site();
        Path home = dir.resolve("home/bywash");
        Process watch = program(umask, "watch", "--site", site.toString(), "--headless");
        try {
            await(home.resolve("run/larkfield.sock"));
            run(umask, "log", "note", "text=here");
            run(umask, "backup", dir.resolve("copy.db").toString());
            run(umask, "record", dir.resolve("taken.jsonl.gz").toString());
            Map<String, String> rights = rights(home);
            assertTrue(rights.keySet().containsAll(List.of("larkfield.db", "bywash.log.0", "run")), rights.toString());
            rights.forEach((name, mode) -> assertEquals("---", mode.substring(3, 6), name + " " + mode));
            rights.forEach((name, mode) -> assertEquals("---", mode.substring(6), name + " " + mode));
            for (String file : List.of("copy.db", "taken.jsonl.gz")) {
                assertEquals(
                        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(dir.resolve(file))));
            }
        } finally {
            watch.destroy();
            watch.waitFor();
        }
    }

    /** SQLite's library is a megabyte: each kill would leave one more, in a folder that may be in memory. */
    @Test
    void whatAKilledWatchUnpackedGoesWithTheNext() throws Exception {
        Path site = site();
        Path library = dir.resolve("home/bywash/native");
        Path socket = dir.resolve("home/bywash/run/larkfield.sock");
        Process killed = program("022", "watch", "--site", site.toString(), "--headless");
        await(socket);
        killed.destroyForcibly().waitFor();
        List<Path> left = in(library);
        assertEquals(2, left.size(), "the library and its mark, but " + left);
        for (Path each : left) {
            Files.setLastModifiedTime(each, FileTime.from(Instant.now().minusSeconds(300)));
        }
        Files.delete(socket);
        Process next = program("022", "watch", "--site", site.toString(), "--headless");
        await(socket);
        assertTrue(in(library).stream().noneMatch(left::contains));
        next.destroy();
        next.waitFor();
        assertEquals(List.of(), in(library));
    }

    private static List<Path> in(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.sorted().toList();
        }
    }

    @Test
    void noPasswordStandsInALogAJournalOrAListOfProcesses() throws Exception {
        Process watch = program("022", "watch", "--site", site().toString(), "--headless");
        try {
            Path home = dir.resolve("home/bywash");
            await(home.resolve("run/larkfield.sock"));
            while (!said("home/bywash/bywash.log.0").contains("9 does not take connections")) {
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
            }
            Path process = Path.of("/proc/" + watch.pid());
            for (String file : List.of("cmdline", "environ")) {
                assertFalse(Files.readString(process.resolve(file), StandardCharsets.ISO_8859_1)
                        .contains(PASSWORD));
            }
            try (Stream<Path> all = Files.walk(home)) {
                for (Path path : all.filter(Files::isRegularFile).toList()) {
                    String text = Files.readString(path, StandardCharsets.ISO_8859_1);
                    assertFalse(text.contains(PASSWORD), path.toString());
                }
            }
            assertFalse(said("out").contains(PASSWORD) || said("err").contains(PASSWORD));
        } finally {
            watch.destroy();
            watch.waitFor();
        }
    }
}
