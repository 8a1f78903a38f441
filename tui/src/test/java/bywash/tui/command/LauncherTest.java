package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The script that starts the program, where something is missing; with the jar itself {@link PackedJarTest} runs it. */
@Timeout(60)
class LauncherTest {
    private static final Path SCRIPT = Path.of("bywash");

    @TempDir
    Path dir;

    private Path installed() throws IOException {
        Path bin = Files.createDirectories(dir.resolve("bin"));
        return Files.copy(SCRIPT, bin.resolve("bywash"));
    }

    private static String said(int code, Map<String, String> environment, Path script) throws Exception {
        ProcessBuilder builder = new ProcessBuilder("/bin/sh", script.toString(), "watch").redirectErrorStream(true);
        builder.environment().putAll(environment);
        Process process = builder.start();
        process.getOutputStream().close();
        String words = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(code, process.waitFor(), words);
        return words;
    }

    @Test
    void saysWhereItLookedForTheJar() throws Exception {
        Path script = installed();
        Path bin = script.getParent();
        assertEquals(
                "bywash: no bywash.jar in " + bin + "/target or " + bin
                        + "/../lib; build it with: mvn -q -DskipTests package\n",
                said(ExitCode.OUR_FAULT, Map.of(), script));
    }

    @Test
    void saysWhichJavaItDidNotFind() throws Exception {
        Path script = installed();
        Files.createFile(Files.createDirectories(dir.resolve("lib")).resolve("bywash.jar"));
        assertEquals(
                "bywash: no /nowhere/bin/java; a JDK or JRE of version 17 or newer is needed, in the PATH or where"
                        + " JAVA_HOME says\n",
                said(ExitCode.OUR_FAULT, Map.of("JAVA_HOME", "/nowhere"), script));
    }

    /** Each word that it names is a command. */
    @Test
    void theCommandsItTellsApartAreThere() throws Exception {
        Matcher branch = Pattern.compile("(?m)^([a-z |]+)\\) set --").matcher(Files.readString(SCRIPT));
        int found = 0;
        while (branch.find()) {
            for (String word : branch.group(1).split(" \\| ")) {
                assertTrue(Main.commandLine().getSubcommands().containsKey(word), word);
                found++;
            }
        }
        assertEquals(4, found);
        assertTrue(Files.isExecutable(SCRIPT));
    }
}
