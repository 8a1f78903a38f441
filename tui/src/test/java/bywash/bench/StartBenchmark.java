package bywash.bench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From {@code java -jar}, and from the script {@code bywash}, to the first whole screen, on a terminal that {@code script}
 * (util-linux) makes. By turns, so that an hour in which the machine is slow is one of both.
 */
class StartBenchmark {
    private static final int RUNS = 9;
    private static final String LAST_WORDS = "q leave";

    @TempDir
    Path dir;

    @Test
    void firstWholeScreen() throws Exception {
        if (!Files.isExecutable(Path.of("/usr/bin/script"))) {
            Budget.said("first whole screen: not measured, for want of the script program (util-linux)");
            return;
        }
        Path site = Program.site(dir, 1);
        double[] jar = new double[RUNS];
        double[] script = new double[RUNS];
        for (int i = 0; i < RUNS; i++) {
            jar[i] = start(Program.java(List.of(), words(site, "jar" + i)));
            script[i] = start(Program.script(List.of(words(site, "script" + i))).command());
        }
        told("java -jar", jar);
        told("bywash watch", script);
    }

    private String[] words(Path site, String state) {
        return new String[] {
            "watch", "--site", site.toString(), "--state", dir.resolve(state).toString()
        };
    }

    private static void told(String how, double[] seconds) {
        Arrays.sort(seconds);
        Budget.most(how + " to the first whole screen, median of " + RUNS, seconds[RUNS / 2], 0.8, "s");
        Budget.note("the same, slowest", seconds[RUNS - 1], "s");
    }

    private static double start(List<String> command) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(
                "/usr/bin/script", "-qfc", "stty cols 80 rows 24; exec " + String.join(" ", command), "/dev/null");
        builder.environment().put("TERM", "xterm");
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("LC_ALL", "C.UTF-8");
        long begin = System.nanoTime();
        Process process = builder.start();
        StringBuilder seen = new StringBuilder();
        try (InputStream in = process.getInputStream()) {
            byte[] bytes = new byte[8192];
            while (seen.indexOf(LAST_WORDS) < 0) {
                int n = in.read(bytes);
                if (n < 0) {
                    throw new IllegalStateException("ended before its first screen: " + seen);
                }
                seen.append(new String(bytes, 0, n, StandardCharsets.UTF_8));
            }
            return (System.nanoTime() - begin) / 1e9;
        } finally {
            process.descendants().forEach(ProcessHandle::destroy);
            process.destroy();
            process.waitFor();
        }
    }
}
