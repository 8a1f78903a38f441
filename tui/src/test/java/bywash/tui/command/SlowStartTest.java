package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayDeque;
import java.util.Queue;
import org.junit.jupiter.api.Test;

class SlowStartTest {
    private final Queue<Runnable> later = new ArrayDeque<>();
    private final StringWriter said = new StringWriter();

    private SlowStart begun() {
        return SlowStart.of("reading the journal", new PrintWriter(said), later::add);
    }

    @Test
    void oneThatTakesLongSaysWhatItIsAt() {
        try (SlowStart start = begun()) {
            later.remove().run();
        }
        assertEquals("reading the journal" + System.lineSeparator(), said.toString());
    }

    @Test
    void oneThatIsDoneByThenSaysNothing() {
        begun().close();
        later.remove().run();
        assertEquals("", said.toString());
    }
}
