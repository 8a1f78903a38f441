package bywash.tui.attach;

import bywash.rules.event.OperatorEntry;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** A caller of a running watch. */
public final class WatchClient {
    /** Ends a sitting that the grower left: ASCII end of transmission, which no screen draws. */
    static final int GOODBYE = 4;

    private final Path state;
    private final String siteId;

    public WatchClient(Path state, String siteId) {
        this.state = state;
        this.siteId = siteId;
    }

    /**
     * Has the watch take down an entry; it is on the disk when this returns.
     *
     * @throws SocketPlace.NoWatch where none runs
     * @throws IOException in words, where it was refused
     */
    /** @return what is doubtful about it, though it was taken down; empty where nothing is */
    public String enter(OperatorEntry entry) throws IOException {
        try (SocketChannel channel = SocketPlace.connect(state, siteId)) {
            return ask(channel, new Request.Enter(entry));
        }
    }

    private static String ask(SocketChannel channel, Request request) throws IOException {
        SocketStreams.output(channel).write((Request.toJson(request) + "\n").getBytes(StandardCharsets.UTF_8));
        Answer answer = Answer.read(WatchServer.line(SocketStreams.input(channel)));
        if (!answer.good()) {
            throw new IOException(answer.words());
        }
        return answer.words();
    }

    /**
     * Shows the screen of the watch until the grower leaves it, the watch ends, or the terminal is gone.
     *
     * @return whether the grower left it; false where the watch ended
     */
    public boolean attach(LocalTty tty, boolean unicode, boolean colour) throws IOException {
        try (SocketChannel channel = SocketPlace.connect(state, siteId)) {
            LocalTty.Size size = tty.size();
            ask(channel, new Request.Attach(size.columns(), size.rows(), unicode, colour));
            DataOutputStream out = new DataOutputStream(SocketStreams.output(channel));
            tty.onResize(now -> KeyFrames.size(out, now.columns(), now.rows()));
            daemon(() -> send(tty.keys(), out, channel));
            return show(SocketStreams.input(channel), tty.screen());
        }
    }

    private static void daemon(Runnable task) {
        Thread thread = new Thread(task, "keys");
        thread.setDaemon(true);
        thread.start();
    }

    private static void send(InputStream keys, DataOutputStream out, SocketChannel channel) {
        byte[] bytes = new byte[1024];
        try (channel) {
            for (int count = keys.read(bytes); count >= 0; count = keys.read(bytes)) {
                KeyFrames.keys(out, bytes, count);
            }
        } catch (IOException e) {
            // The watch or the terminal is gone; the reading side sees it too.
        }
    }

    private static boolean show(InputStream in, OutputStream screen) throws IOException {
        byte[] bytes = new byte[8192];
        boolean left = false;
        try {
            for (int count = in.read(bytes); count >= 0; count = in.read(bytes)) {
                left = count > 0 && bytes[count - 1] == GOODBYE;
                screen.write(bytes, 0, left ? count - 1 : count);
                screen.flush();
            }
        } catch (java.nio.channels.ClosedChannelException e) {
            return true; // closed by us: the terminal is gone
        }
        return left;
    }
}
