package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Frame;
import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A whole sitting on a virtual terminal: keys waiting in its input, ended by a key or by end of input. */
@Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class SessionLoopTest {
    private final DefaultVirtualTerminal terminal = new PollingTerminal();
    private final List<OperatorEntry> entries = new ArrayList<>();
    private CompletableFuture<Boolean> kept = CompletableFuture.completedFuture(true);

    private void run(Supplier<Frame> frames) throws IOException {
        new TerminalSession(new DisplaySettings(true, true, false)).run(terminal, frames, entry -> {
            entries.add(entry);
            return kept;
        });
    }

    private void type(String characters) {
        for (char c : characters.toCharArray()) {
            terminal.addInput(new KeyStroke(c, false, false));
        }
    }

    @Test
    void handsOnWhatIsEnteredAndEndsWithTheKey() throws IOException {
        type("aaqy");
        run(Frames::valveOpen);
        assertEquals(
                List.of(
                        new OperatorEntry.Acknowledge(Frames.NOW, "unplanned-inflow", "sump"),
                        new OperatorEntry.Acknowledge(Frames.NOW, "overflow-near", "sump")),
                entries);
    }

    /** The bottom line after an entry, read when the next key comes. */
    private String after(CompletableFuture<Boolean> disk) throws IOException {
        kept = disk;
        StringBuilder seen = new StringBuilder();
        type("aa");
        run(() -> {
            if (!entries.isEmpty() && seen.length() == 0) {
                seen.append(line(23));
                type("qy");
            }
            return Frames.valveOpen();
        });
        return seen.toString();
    }

    @Test
    void whatIsNotOnTheDiskIsNotSaidToBeDone() throws IOException {
        assertTrue(after(CompletableFuture.completedFuture(false)).startsWith("NOT ON THE DISK"));
    }

    @Test
    void whatIsOnTheDiskIsSaidToBeDone() throws IOException {
        String said = after(CompletableFuture.completedFuture(true));
        assertTrue(said.contains("cknowledged"), said);
    }

    /** A watch connects to its broker then. */
    @Test
    void saysOnceThatTheFirstScreenIsOut() throws IOException {
        List<String> topLines = new ArrayList<>();
        TerminalSession session = new TerminalSession(new DisplaySettings(true, true, false));
        session.onFirstScreen(() -> topLines.add(line(0)));
        type("?");
        terminal.addInput(new KeyStroke(KeyType.EOF));
        session.run(terminal, Frames::quiet, Entries.unkept(entries::add));
        assertEquals(1, topLines.size());
        assertTrue(topLines.get(0).startsWith("Larkfield"), topLines.get(0));
    }

    private String line(int row) {
        StringBuilder line = new StringBuilder();
        for (int column = 0; column < 80; column++) {
            line.append(terminal.getCharacter(column, row).getCharacterString());
        }
        return line.toString();
    }

    @Test
    void endsWhenTheInputEnds() throws IOException {
        terminal.addInput(new KeyStroke(KeyType.EOF));
        run(Frames::quiet);
        assertTrue(entries.isEmpty());
    }

    @Test
    void ctrlCEndsAtOnce() throws IOException {
        terminal.addInput(new KeyStroke('c', true, false));
        run(Frames::quiet);
        assertTrue(entries.isEmpty());
    }

    @Test
    void theTerminalIsPutBackEvenWhenAFrameFails() {
        try {
            run(() -> {
                throw new IllegalStateException("no frame");
            });
        } catch (IllegalStateException | IOException e) {
            assertEquals("no frame", e.getMessage());
        }
        assertTrue(terminal.isCursorVisible());
    }

    /** The virtual terminal holds its lock while it waits for a key, which a real one does not. */
    private static final class PollingTerminal extends DefaultVirtualTerminal {
        PollingTerminal() {
            super(new TerminalSize(80, 24));
        }

        @Override
        public KeyStroke readInput() {
            KeyStroke stroke = pollInput();
            while (stroke == null) {
                LockSupport.parkNanos(1_000_000);
                stroke = pollInput();
            }
            return stroke;
        }
    }
}
