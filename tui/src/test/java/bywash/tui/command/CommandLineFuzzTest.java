package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** Whatever is typed, the command ends with one of its exit codes, says something, and shows no stack trace. */
class CommandLineFuzzTest {
    private static final int CASES = 300 * Integer.getInteger("fuzz.times", 1);
    private static final Set<Integer> CODES =
            Set.of(ExitCode.GOOD, ExitCode.USAGE, ExitCode.SITE_FILE, ExitCode.RECORDING);
    private static final List<String> COMMANDS = List.of("check", "replay", "calc", "help", "--help", "");
    private static final List<String> WORDS = List.of(
            "--site",
            "--speed",
            "--headless",
            "--report",
            "--help",
            "--version",
            "max",
            "-1",
            "0",
            "1e400",
            "NaN",
            "22 Cel",
            "6.8",
            "7 mg/L",
            "1500 L",
            "thiosulfate",
            "--ph",
            "--temperature",
            "--volume",
            "oxygen",
            "ammonia",
            "vessel",
            "dechlorinate",
            "ph-dose",
            "feed",
            "@none",
            "",
            "\u001b[2J",
            "--",
            "-",
            "=",
            "--ph=\u202e");

    @TempDir
    Path dir;

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void everyLineEndsInOneOfTheCodes(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        Path spoilt =
                Files.write(dir.resolve("spoilt.jsonl"), "{\"time\":3}\n\u0000\n".getBytes(StandardCharsets.UTF_8));
        Path faulty = Files.writeString(dir.resolve("faulty.yaml"), "name: [\n");
        Path report = dir.resolve("report.json");
        for (int i = 0; i < CASES; i++) {
            List<String> line = new ArrayList<>();
            line.add(COMMANDS.get(random.nextInt(COMMANDS.size())));
            for (int word = random.nextInt(6); word > 0; word--) {
                line.add(
                        switch (random.nextInt(8)) {
                            case 0 -> spoilt.toString();
                            case 1 -> faulty.toString();
                            case 2 -> report.toString();
                            case 3 -> dir.toString();
                            default -> WORDS.get(random.nextInt(WORDS.size()));
                        });
            }
            run(line);
        }
    }

    private static void run(List<String> line) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine command = Main.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        int code = command.execute(line.toArray(String[]::new));
        String said = out + err.toString();
        assertTrue(CODES.contains(code), () -> line + " ended with " + code + ": " + said);
        assertFalse(said.isBlank(), () -> line + " said nothing");
        assertFalse(said.contains("\tat "), () -> line + " showed a stack trace: " + said);
        assertTrue(said.indexOf('\u001b') < 0, () -> line + " wrote an escape: " + said);
        if (code != ExitCode.GOOD) {
            assertFalse(err.toString().isBlank(), () -> line + " failed without a word on standard error");
        }
    }
}
