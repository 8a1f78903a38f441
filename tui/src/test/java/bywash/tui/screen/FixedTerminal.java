package bywash.tui.screen;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.ansi.ANSITerminal;
import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** An ANSI terminal of one size, without a device. */
final class FixedTerminal extends ANSITerminal {
    private final TerminalSize size;

    FixedTerminal(OutputStream out, int columns, int rows) {
        super(new ByteArrayInputStream(new byte[0]), out, StandardCharsets.UTF_8);
        size = new TerminalSize(columns, rows);
    }

    @Override
    protected TerminalSize findTerminalSize() {
        return size;
    }
}
