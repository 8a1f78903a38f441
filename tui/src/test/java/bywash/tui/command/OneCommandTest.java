package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class OneCommandTest {
    static Set<String> names() {
        return new TreeSet<>(Main.commandLine().getSubcommands().keySet());
    }

    /** The quick start says the same as the whole. */
    @ParameterizedTest
    @MethodSource("names")
    void helpsAsTheWholeDoes(String name) {
        assertEquals(1, Main.commandLineFor(name, "--help").getSubcommands().size());
        assertEquals(
                said(Main.commandLine(), name, "--help"), said(Main.commandLineFor(name, "--help"), name, "--help"));
        assertEquals(said(Main.commandLine(), name, "--none"), said(Main.commandLineFor(name), name, "--none"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--help", "wtch"})
    void anythingElseGetsTheWhole(String word) {
        assertTrue(Main.commandLineFor(word).getSubcommands().size() > 5);
    }

    private static String said(CommandLine line, String... words) {
        StringWriter text = new StringWriter();
        PrintWriter to = new PrintWriter(text);
        int code = line.setOut(to).setErr(to).execute(words);
        return code + ": " + text;
    }
}
