package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** The unit file that is shipped: what it starts is there, and what is written of it holds. */
class UnitFileTest {
    private static final Path UNIT = Path.of("src/main/systemd/bywash@.service");
    private static final List<String> NUMBERS =
            List.of("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten");

    @TempDir
    Path dir;

    private static List<String> lines() throws Exception {
        return Files.readAllLines(UNIT);
    }

    private static String value(String key) throws Exception {
        return lines().stream()
                .filter(l -> l.startsWith(key + "="))
                .map(l -> l.substring(key.length() + 1))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void startsACommandThatTheProgramTakes() throws Exception {
        String start = value("ExecStart");
        String script = "/bin/bywash ";
        String arguments = start.substring(start.indexOf(script) + script.length());
        assertTrue(arguments.startsWith("watch --headless"), arguments);
        CommandLine.ParseResult parsed = Main.commandLine().parseArgs(arguments.split(" "));
        assertEquals("watch", parsed.subcommand().commandSpec().name());
    }

    @Test
    void triesAgainUnlessThatCannotHelp() throws Exception {
        assertEquals(ExitCode.USAGE + " " + ExitCode.SITE_FILE, value("RestartPreventExitStatus"));
        assertEquals("always", value("Restart"));
        assertEquals(String.valueOf(128 + 15), value("SuccessExitStatus"), "SIGTERM, by POSIX's shells");
    }

    @Test
    void theReadmeCountsTheCommandsThatSetItUp() throws Exception {
        long commands = lines().stream().filter(l -> l.matches("#   \\S.*")).count();
        String readme = Files.readString(Path.of("../README.md"));
        assertTrue(readme.contains("tui/" + UNIT), "the README names the file");
        assertTrue(
                readme.contains("its head lists the " + NUMBERS.get((int) commands) + " commands that set it up"),
                () -> commands + " commands");
    }

    /** By the service manager's own checker, where it is installed. */
    @Test
    void isSoundToTheServiceManager() throws Exception {
        Path tool = Path.of("/usr/bin/systemd-analyze");
        assumeTrue(Files.isExecutable(tool), "systemd-analyze is not here");
        Path copy = Files.copy(UNIT, dir.resolve("bywash@larkfield.service"));
        ProcessBuilder builder = new ProcessBuilder(tool.toString(), "--user", "verify", copy.toString());
        builder.environment().put("XDG_RUNTIME_DIR", dir.toString());
        Process process = builder.redirectErrorStream(true).start();
        process.getOutputStream().close();
        String words = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertTrue(process.waitFor(30, TimeUnit.SECONDS));
        assertEquals("", words);
        assertEquals(0, process.exitValue());
    }
}
