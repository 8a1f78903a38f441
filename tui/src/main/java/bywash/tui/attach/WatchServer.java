package bywash.tui.attach;

import bywash.rules.event.OperatorEntry;
import bywash.tui.screen.DisplaySettings;
import bywash.tui.screen.RemoteLine;
import bywash.tui.screen.TerminalSession;
import bywash.tui.view.EntryCheck;
import java.io.DataInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Answers other programs of the same user: draws them the screen, and takes down what they enter. */
public final class WatchServer implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(WatchServer.class);
    private static final int MOST_CALLERS = 16;
    private static final int LONGEST_REQUEST = 65_536;
    private static final long PATIENCE_S = 10;
    /** After a fault in taking a call, so that one that lasts does not fill the log. */
    private static final long PAUSE_MS = 1000;
    /** An entry waits two seconds for readings that are late, then for the next round. */
    private static final long LOOK_AGAIN_MS = 100;

    private static final int MOST_LOOKS = 50;

    private final Path state;
    private final String siteId;
    private final WatchHost host;
    private final ServerSocketChannel server;
    private final Set<SocketChannel> callers = ConcurrentHashMap.newKeySet();

    private final Duration patience;
    /** Never down: to wait on. */
    private final CountDownLatch pause = new CountDownLatch(1);
    /** The time of the latest entry that was taken down here. */
    private volatile @Nullable Instant takenAt;

    private WatchServer(Path state, String siteId, WatchHost host, ServerSocketChannel server, Duration patience) {
        this.patience = patience;
        this.state = state;
        this.siteId = siteId;
        this.host = host;
        this.server = server;
    }

    /** Begins to listen. */
    public static WatchServer start(Path state, String siteId, WatchHost host) throws IOException {
        return start(state, siteId, host, Duration.ofSeconds(PATIENCE_S));
    }

    /** @param patience how long a caller may say nothing before it asks */
    static WatchServer start(Path state, String siteId, WatchHost host, Duration patience) throws IOException {
        WatchServer server = new WatchServer(state, siteId, host, SocketPlace.listen(state, siteId), patience);
        daemon(server::accept, "attach");
        return server;
    }

    private static void daemon(Runnable task, String name) {
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() {
        while (server.isOpen()) {
            try {
                SocketChannel caller = server.accept();
                callers.add(caller);
                daemon(() -> serve(caller), "caller");
            } catch (ClosedChannelException e) {
                return;
            } catch (IOException e) {
                LOG.warn("a caller was not heard", e);
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(PAUSE_MS));
            }
        }
    }

    /** Whoever calls and asks for nothing takes a place from others; it is theirs for a while only. */
    private void hurry(SocketChannel caller, AtomicBoolean asked) {
        CompletableFuture.delayedExecutor(patience.toMillis(), TimeUnit.MILLISECONDS)
                .execute(() -> {
                    if (!asked.get()) {
                        callers.remove(caller);
                        try {
                            caller.close();
                        } catch (IOException e) {
                            LOG.debug("not closed", e);
                        }
                    }
                });
    }

    private void serve(SocketChannel caller) {
        AtomicBoolean asked = new AtomicBoolean();
        hurry(caller, asked);
        try (caller) {
            InputStream in = SocketStreams.input(caller);
            OutputStream out = SocketStreams.output(caller);
            Request request;
            try {
                request = Request.read(line(in));
                asked.set(true);
                if (callers.size() > MOST_CALLERS) {
                    throw new IOException(MOST_CALLERS + " are attached already; let one leave");
                }
            } catch (IOException e) {
                answer(out, new Answer(false, String.valueOf(e.getMessage())));
                return;
            }
            switch (request.kind()) {
                case ENTER -> answer(out, enter(((Request.Enter) request).entry()));
                case ATTACH -> {
                    answer(out, Answer.GOOD);
                    draw((Request.Attach) request, in, out);
                }
            }
        } catch (IOException e) {
            LOG.debug("a caller is gone", e);
        } finally {
            callers.remove(caller);
        }
    }

    private static void answer(OutputStream out, Answer answer) throws IOException {
        out.write((answer.toJson() + "\n").getBytes(StandardCharsets.UTF_8));
    }

    /** Up to the line's end and no further; what follows are frames. */
    static String line(InputStream in) throws IOException {
        StringBuilder text = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0 || text.length() >= LONGEST_REQUEST) {
                throw new IOException("the line has no end");
            }
            text.append((char) c);
        }
        return new String(text.toString().getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
    }

    /** What is wrong with it, once the frame shows what was entered just before: an entry reaches the rules some seconds later. */
    private String problem(OperatorEntry entry) throws InterruptedException {
        String problem = EntryCheck.problem(host.frame(), entry);
        for (int i = 0; i < MOST_LOOKS && !problem.isEmpty() && underway(); i++) {
            pause.await(LOOK_AGAIN_MS, TimeUnit.MILLISECONDS);
            problem = EntryCheck.problem(host.frame(), entry);
        }
        return problem;
    }

    /** Whether an entry that was taken down has not reached the rules yet. */
    private boolean underway() {
        Instant last = takenAt;
        Instant reached = host.frame().snapshot().at();
        return last != null && (reached == null || reached.isBefore(last));
    }

    private CompletableFuture<Boolean> take(OperatorEntry entry) {
        Instant last = takenAt;
        takenAt = last == null || entry.at().isAfter(last) ? entry.at() : last;
        return host.enter(entry);
    }

    private Answer enter(OperatorEntry entry) {
        try {
            String problem = problem(entry);
            if (!problem.isEmpty()) {
                return new Answer(false, problem);
            }
            String doubt = EntryCheck.doubt(host.frame(), entry);
            boolean kept = take(entry).get(PATIENCE_S, TimeUnit.SECONDS);
            return kept
                    ? new Answer(true, doubt)
                    : new Answer(
                            false,
                            "not on the disk yet: the watch has it, and writes it when its journal works again; do not"
                                    + " enter it twice");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new Answer(false, "the watch is ending");
        } catch (ExecutionException | TimeoutException e) {
            return new Answer(false, "the watch did not take it down in " + PATIENCE_S + " s; look at its log");
        }
    }

    private void draw(Request.Attach attach, InputStream in, OutputStream out) throws IOException {
        KeyPipe keys = new KeyPipe();
        RemoteLine line = new RemoteLine(keys, leftOpen(out), attach.columns(), attach.rows());
        daemon(() -> listen(in, keys, line), "caller's keys");
        DisplaySettings settings = new DisplaySettings(attach.unicode(), attach.colour(), false);
        new TerminalSession(settings).run(line, host::frame, this::take);
        out.write(WatchClient.GOODBYE);
    }

    /** The sitting closes its terminal at the end; the goodbye is still to be sent then. */
    private static OutputStream leftOpen(OutputStream out) {
        return new FilterOutputStream(out) {
            @Override
            public void write(byte[] bytes, int offset, int length) throws IOException {
                out.write(bytes, offset, length);
            }

            @Override
            public void close() {}
        };
    }

    private static void listen(InputStream in, KeyPipe keys, RemoteLine line) {
        try {
            KeyFrames.read(new DataInputStream(in), new KeyFrames.Sink() {
                @Override
                public void keys(byte[] bytes) {
                    keys.put(bytes);
                }

                @Override
                public void size(int columns, int rows) {
                    line.resize(columns, rows);
                }
            });
        } catch (IOException e) {
            LOG.debug("a caller is gone", e);
        } finally {
            keys.end();
        }
    }

    /** Stops listening, and lets those go who are attached. */
    @Override
    public void close() {
        try {
            server.close();
            SocketPlace.remove(state, siteId);
            for (SocketChannel caller : callers) {
                caller.close();
            }
        } catch (IOException e) {
            LOG.debug("not closed", e);
        }
    }
}
