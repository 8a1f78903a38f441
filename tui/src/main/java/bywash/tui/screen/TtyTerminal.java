package bywash.tui.screen;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.ansi.UnixLikeTerminal;
import com.googlecode.lanterna.terminal.ansi.UnixTerminal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The text terminal. Ctrl-C arrives as a key. The size is asked from the terminal device, not by escape sequences whose
 * answer would mix with the keys and which a slow line delays.
 */
final class TtyTerminal extends UnixTerminal {
    private static final Pattern SIZE = Pattern.compile("\\s*(\\d{1,4}) (\\d{1,4})\\s*");
    private static final TerminalSize FALLBACK = new TerminalSize(80, 24);

    TtyTerminal(InputStream in, OutputStream out, Charset charset) throws IOException {
        super(in, out, charset, UnixLikeTerminal.CtrlCBehaviour.TRAP);
    }

    @Override
    protected TerminalSize findTerminalSize() throws IOException {
        Matcher size = SIZE.matcher(runSTTYCommand("size"));
        if (!size.matches() || size.group(1).equals("0") || size.group(2).equals("0")) {
            return FALLBACK;
        }
        return new TerminalSize(Integer.parseInt(size.group(2)), Integer.parseInt(size.group(1)));
    }

    /** The library's own answer has a zero byte behind each character of two bytes. */
    @Override
    protected byte[] translateCharacter(char character) {
        return String.valueOf(character).getBytes(getCharset());
    }
}
