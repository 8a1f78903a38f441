package bywash.tui.attach;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sun.misc.Signal;

/** The terminal that this program runs in, handed over key by key, and put back as it was however the program ends. */
public final class LocalTty implements AutoCloseable {
    private static final Pattern SIZE = Pattern.compile("\\s*(\\d{1,4}) (\\d{1,4})\\s*");
    /** Attributes off, cursor shown, the screen from before: DEC private modes 25 and 1049 of a terminal of this family. */
    private static final byte[] AS_BEFORE = "\u001b[0m\u001b[?25h\u001b[?1049l".getBytes(StandardCharsets.US_ASCII);

    private final String settings;
    private final InputStream keys = new FileInputStream(FileDescriptor.in);
    private final OutputStream screen = new FileOutputStream(FileDescriptor.out);
    private final AtomicBoolean taken = new AtomicBoolean(true);
    private final Thread hook = new Thread(this::restore, "restore terminal");

    /** Columns and rows. */
    public record Size(int columns, int rows) {}

    /** Hears of a new size. */
    interface Resized {
        void to(Size size) throws IOException;
    }

    private LocalTty(String settings) {
        this.settings = settings;
    }

    /**
     * Takes the terminal over.
     *
     * @throws IOException in words, where there is none
     */
    public static LocalTty take() throws IOException {
        if (System.console() == null) {
            throw new IOException("no terminal: standard input and output must both be one");
        }
        LocalTty tty = new LocalTty(stty("-g").strip());
        Runtime.getRuntime().addShutdownHook(tty.hook);
        stty("-icanon", "-echo", "-isig", "-ixon", "min", "1", "time", "0");
        return tty;
    }

    InputStream keys() {
        return keys;
    }

    OutputStream screen() {
        return screen;
    }

    Size size() throws IOException {
        Matcher size = SIZE.matcher(stty("size"));
        if (!size.matches() || size.group(1).equals("0") || size.group(2).equals("0")) {
            return new Size(80, 24);
        }
        return new Size(Integer.parseInt(size.group(2)), Integer.parseInt(size.group(1)));
    }

    void onResize(Resized resized) {
        Signal.handle(new Signal("WINCH"), signal -> {
            try {
                resized.to(size());
            } catch (IOException e) {
                // The line is gone; the sitting ends by itself.
            }
        });
    }

    private void restore() {
        if (taken.compareAndSet(true, false)) {
            try {
                screen.write(AS_BEFORE);
                stty(settings);
            } catch (IOException e) {
                // The terminal is gone; nobody is there to see it.
            }
        }
    }

    private static String stty(String... arguments) throws IOException {
        String[] command = new String[arguments.length + 1];
        command[0] = "stty";
        System.arraycopy(arguments, 0, command, 1, arguments.length);
        Process process = new ProcessBuilder(command)
                .redirectInput(ProcessBuilder.Redirect.INHERIT)
                .redirectErrorStream(true)
                .start();
        String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (process.waitFor() != 0) {
                throw new IOException("stty: " + answer.strip());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
        return answer;
    }

    @Override
    public void close() {
        restore();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The program is ending; the hook has nothing left to do.
        }
    }
}
