package bywash.bench;

import bywash.samples.SampleRecordings;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The built jar as a process, and the demo's site file on disk. */
final class Program {
    private Program() {}

    static String jar() {
        String jar = System.getProperty("bywash.jar", "tui/target/bywash.jar");
        if (!Files.isRegularFile(Path.of(jar))) {
            throw new IllegalStateException(jar + " is missing; run mvn -B -Pbench verify");
        }
        return jar;
    }

    static List<String> java(List<String> options, String... words) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.add("-jar");
        command.add(jar());
        command.addAll(List.of(words));
        return command;
    }

    /** The script that is handed out with the jar, run by the Java that runs this. */
    static ProcessBuilder script(List<String> words) {
        Path script = Path.of(jar()).toAbsolutePath().getParent().getParent().resolve("bywash");
        if (!Files.isRegularFile(script)) {
            throw new IllegalStateException(script + " is missing");
        }
        List<String> command = new ArrayList<>(List.of("/bin/sh", script.toString()));
        command.addAll(words);
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        return builder;
    }

    /** The demo's site, with the broker at a port of this machine. */
    static Path site(Path dir, int port) throws IOException {
        try (InputStream in = SampleRecordings.class.getResourceAsStream("/bywash/samples/sites/larkfield.yaml")) {
            if (in == null) {
                throw new IllegalStateException("the demo's site is missing");
            }
            String text = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            String there = text.replaceAll("mqtt://127.0.0.1:\\d+", "mqtt://127.0.0.1:" + port);
            return Files.writeString(dir.resolve("larkfield.yaml"), there);
        }
    }
}
