package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class LicencesTest {
    /** Every jar that the tests run with, but those of the tests themselves and our own. */
    @Test
    void namesEveryLibraryThatIsInTheProgram() {
        StringWriter out = new StringWriter();
        Main.commandLine().setOut(new PrintWriter(out)).execute("--licences");
        List<String> libraries = Arrays.stream(
                        System.getProperty("java.class.path").split(File.pathSeparator, -1))
                .filter(path -> path.endsWith(".jar"))
                .map(path -> Path.of(path).toAbsolutePath())
                .filter(path -> !path.getFileName().toString().startsWith("bywash"))
                .filter(path -> path.getNameCount() > 3)
                .map(path -> path.getName(path.getNameCount() - 3).toString())
                .filter(name -> !name.matches("bywash.*|junit.*|archunit.*|hipparchus.*|opentest4j|apiguardian.*"
                        + "|surefire.*|org.jacoco.*|target|jmh.*|commons-math3|jopt.*"))
                .sorted()
                .toList();
        assertTrue(libraries.size() > 20, libraries.toString());
        List<String> missing = libraries.stream()
                .filter(name -> !out.toString().contains(":" + name + ":"))
                .toList();
        assertEquals(List.of(), missing, out.toString());
    }

    @Test
    void listsEveryLibraryWithALicenceAndNoneThatReportsHome() {
        StringWriter out = new StringWriter();
        int code = Main.commandLine().setOut(new PrintWriter(out)).execute("--licences");
        assertEquals(ExitCode.GOOD, code);
        String list = out.toString();
        for (String library :
                List.of("lanterna", "hivemq-mqtt-client", "micrometer-core", "jackson-databind", "picocli")) {
            assertTrue(list.contains(library), library + " is missing");
        }
        assertFalse(list.contains("Unknown license"), list);
        for (String unwanted : List.of("bugsnag", "librato", "HikariCP", "reload4j")) {
            assertFalse(list.contains(unwanted), unwanted + " is in the program");
        }
    }
}
