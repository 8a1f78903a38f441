package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Playback;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * One sitting at the terminal: takes it over, shows the latest frame, hands on what the grower enters, and puts the
 * terminal back as it was, however the sitting ends: by key, by Ctrl-C, by a signal, or because the line dropped.
 */
public final class TerminalSession {
    private final DisplaySettings settings;
    private final Consumer<Playback.Command> controls;
    private Runnable shown = () -> {};
    private final CountingOutput out = new CountingOutput(new FileOutputStream(FileDescriptor.out));

    public TerminalSession(DisplaySettings settings) {
        this(settings, command -> {});
    }

    /** @param controls takes what a replay is to do, on the calling thread; must not block */
    public TerminalSession(DisplaySettings settings, Consumer<Playback.Command> controls) {
        this.settings = settings;
        this.controls = controls;
    }

    /** What is run, on the calling thread, once the first screen is out; must not block. */
    public void onFirstScreen(Runnable run) {
        shown = run;
    }

    /** Bytes sent to the terminal so far. */
    public long bytesSent() {
        return out.count();
    }

    /**
     * Shows frames until the grower leaves or the line drops.
     *
     * @param frames gives the latest frame; asked at most 4 times a second
     * @param entries takes what the grower enters, on the calling thread; must not block
     * @throws NoTerminalException when there is nothing to draw on
     */
    public void run(Supplier<Frame> frames, Entries entries) throws IOException {
        if (System.console() == null) {
            throw new NoTerminalException(
                    "no terminal: standard input and output must both be one; without it use --headless");
        }
        if (settings.dumb()) {
            throw new NoTerminalException(
                    "this terminal cannot be drawn on (TERM is not set, or dumb); set TERM, or use --headless");
        }
        Terminal terminal = new TtyTerminal(
                System.in,
                new BufferedOutputStream(out, 8192),
                settings.unicode() ? StandardCharsets.UTF_8 : StandardCharsets.US_ASCII);
        run(terminal, frames, entries);
    }

    /**
     * The same on a terminal at the other end of a line, of a watch that goes on when this sitting ends.
     *
     * @param entries takes what the grower enters, on the calling thread; must not block
     */
    public void run(RemoteLine line, Supplier<Frame> frames, Entries entries) throws IOException {
        Charset charset = settings.unicode() ? StandardCharsets.UTF_8 : StandardCharsets.US_ASCII;
        run(new RemoteTerminal(line, charset), new ScreenModel(true), frames, entries);
    }

    void run(Terminal terminal, Supplier<Frame> frames, Entries entries) throws IOException {
        run(terminal, new ScreenModel(), frames, entries);
    }

    private void run(Terminal terminal, ScreenModel model, Supplier<Frame> frames, Entries entries) throws IOException {
        TerminalScreen screen = new TerminalScreen(terminal);
        Restore restore = new Restore(screen, terminal);
        Thread hook = new Thread(restore, "restore terminal");
        Runtime.getRuntime().addShutdownHook(hook);
        try {
            screen.setCursorPosition(null);
            screen.startScreen();
            new SessionLoop(screen, settings, new Sitting(model, frames, entries, controls, shown)).run();
        } finally {
            restore.run();
            forget(hook);
        }
    }

    private static void forget(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The process is already ending; the hook has nothing left to do.
        }
    }

    /** Puts the terminal back, once. */
    private record Restore(TerminalScreen screen, Terminal terminal, AtomicBoolean done) implements Runnable {
        Restore(TerminalScreen screen, Terminal terminal) {
            this(screen, terminal, new AtomicBoolean());
        }

        @Override
        public void run() {
            if (done.compareAndSet(false, true)) {
                quietly(() -> terminal.setCursorVisible(true));
                quietly(() -> screen.stopScreen(false));
                quietly(terminal::close);
            }
        }

        /** Each step is tried whatever became of the one before: the line may be gone already. */
        private static void quietly(Step step) {
            try {
                step.run();
            } catch (IOException | RuntimeException e) {
                // Nothing more can be done for this step, and nobody is there to be told.
            }
        }
    }

    /** One step of putting the terminal back. */
    private interface Step {
        void run() throws IOException;
    }
}
