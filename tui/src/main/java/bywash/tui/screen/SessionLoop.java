package bywash.tui.screen;

import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Frame;
import bywash.tui.view.Playback;
import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.screen.TerminalScreen;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Asks for a frame at most 4 times a second, acts on keys at once, draws when all keys that wait are acted on. */
final class SessionLoop {
    private static final long FRAME_NANOS = Duration.ofMillis(250).toNanos();

    /** The journal syncs in milliseconds; longer and the grower is told. */
    private static final long PATIENCE_MS = 2000;

    private final TerminalScreen screen;
    private final Painter painter;
    private final Bell bell;
    private final KeyReader keys;
    private final boolean unicode;
    private final Supplier<Frame> frames;
    private final Entries entries;
    private final Consumer<Playback.Command> controls;
    private final ScreenModel model;
    private final Runnable shown;

    SessionLoop(TerminalScreen screen, DisplaySettings settings, Sitting sitting) {
        ScreenModel model = sitting.model();
        this.model = model;
        this.screen = screen;
        this.bell = model.bell();
        this.painter = new Painter(screen, settings);
        this.keys = new KeyReader(screen.getTerminal());
        this.unicode = settings.unicode();
        this.frames = sitting.frames();
        this.entries = sitting.entries();
        this.controls = sitting.controls();
        this.shown = sitting.shown();
    }

    void run() throws IOException {
        keys.start();
        Frame frame = frames.get();
        long asked = System.nanoTime();
        draw(frame);
        shown.run();
        ring(frame);
        boolean here = true;
        boolean unseen = false;
        while (here) {
            KeyPress key = keys.await(Duration.ofNanos(FRAME_NANOS - (System.nanoTime() - asked)));
            boolean changed = key != null;
            if (key != null) {
                here = act(model.handle(key, frame));
            }
            boolean due = System.nanoTime() - asked >= FRAME_NANOS;
            if (due) {
                asked = System.nanoTime();
                Frame next = frames.get();
                changed |= differs(frame, next);
                frame = next;
                ring(frame);
            }
            changed |= resized();
            unseen |= changed;
            if (here && unseen && (due || !keys.more())) {
                unseen = false;
                draw(frame);
            }
        }
    }

    private boolean act(Effect effect) {
        return switch (effect.kind()) {
            case ENTER -> {
                enter(((Effect.Enter) effect).entries());
                yield true;
            }
            case PLAY -> {
                controls.accept(((Effect.Play) effect).command());
                yield true;
            }
            case REDRAW, SAY, OPEN, BACK -> true;
            case QUIT -> false;
        };
    }

    /** On the disk before it is shown; where it is not, that is what is said. */
    private void enter(List<OperatorEntry> entered) {
        CompletableFuture<?>[] all = entered.stream().map(entries::enter).toArray(CompletableFuture[]::new);
        String wrong = "";
        try {
            CompletableFuture.allOf(all).get(PATIENCE_MS, TimeUnit.MILLISECONDS);
            boolean kept = Stream.of(all).allMatch(f -> Boolean.TRUE.equals(f.join()));
            wrong = kept ? "" : "NOT ON THE DISK YET. It counts, and is written as soon as the journal works again.";
        } catch (TimeoutException e) {
            wrong = "Not yet on the disk; look at the log, page l, before you enter it again.";
        } catch (ExecutionException e) {
            wrong = "NOT ENTERED: a fault of ours; see bywash.log.";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (!wrong.isEmpty()) {
            model.say(wrong);
        }
    }

    private static boolean differs(Frame before, Frame now) {
        return before.snapshot() != now.snapshot()
                || !before.losses().equals(now.losses())
                || !before.replay().equals(now.replay())
                || now.snapshot().at() == null;
    }

    /** The terminal's bell, when an alarm is new. */
    private void ring(Frame frame) throws IOException {
        if (bell.rings(frame)) {
            screen.getTerminal().bell();
        }
    }

    private boolean resized() {
        boolean changed = screen.doResizeIfNecessary() != null;
        if (changed) {
            painter.forget();
        }
        return changed;
    }

    private void draw(Frame frame) throws IOException {
        TerminalSize size = screen.getTerminalSize();
        painter.paint(Screens.draw(frame, model, unicode, size.getColumns(), size.getRows()));
    }
}
