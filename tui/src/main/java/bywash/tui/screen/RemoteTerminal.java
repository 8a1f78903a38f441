package bywash.tui.screen;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.ansi.ANSITerminal;
import java.io.BufferedOutputStream;
import java.nio.charset.Charset;

/** The terminal at the other end of a line, which tells its size by itself. */
final class RemoteTerminal extends ANSITerminal {
    private final RemoteLine line;

    RemoteTerminal(RemoteLine line, Charset charset) {
        super(line.keys(), new BufferedOutputStream(line.screen(), 8192), charset);
        this.line = line;
        line.onResize((columns, rows) -> onResized(new TerminalSize(columns, rows)));
    }

    @Override
    protected TerminalSize findTerminalSize() {
        return new TerminalSize(line.columns(), line.rows());
    }

    /** The library's own answer has a zero byte behind each character of two bytes. */
    @Override
    protected byte[] translateCharacter(char character) {
        return String.valueOf(character).getBytes(getCharset());
    }
}
