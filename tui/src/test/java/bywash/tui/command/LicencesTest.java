package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;

class LicencesTest {
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
