package bywash.tui.attach;

import bywash.ingest.text.OwnFiles;
import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Where a watch listens: {@code run/SITE.sock} in its state folder. The folder run is its owner's alone. */
public final class SocketPlace {
    private static final String TAIL = ".sock";
    /** Most bytes of a socket's path on Linux, less one for its end. */
    private static final int LONGEST = 107;

    private SocketPlace() {}

    private static Path path(Path state, String siteId) throws IOException {
        Path path = state.toAbsolutePath().resolve("run").resolve(siteId + TAIL);
        if (path.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8).length > LONGEST) {
            throw new IOException(
                    "the path of the socket is too long for the system: " + path + "; give --state a shorter one");
        }
        return path;
    }

    /** Listens. The one watch of a site calls this, holding the journal's lock: a socket that is there is a dead one's. */
    static ServerSocketChannel listen(Path state, String siteId) throws IOException {
        Path path = path(state, siteId);
        Path folder = path.getParent();
        if (folder == null) {
            throw new IOException(path + " has no folder");
        }
        OwnFiles.folder(folder);
        OwnFiles.mustBeOurs(state.toAbsolutePath().normalize());
        OwnFiles.mustBeOurs(folder);
        OwnFiles.close(folder);
        Files.deleteIfExists(path);
        ServerSocketChannel server = ServerSocketChannel.open(StandardProtocolFamily.UNIX);
        try {
            server.bind(UnixDomainSocketAddress.of(path));
            OwnFiles.closeFile(path);
            return server;
        } catch (IOException e) {
            server.close();
            throw e;
        }
    }

    static void remove(Path state, String siteId) throws IOException {
        Files.deleteIfExists(path(state, siteId));
    }

    /**
     * Connects to the watch of a site, in a folder that is ours: what another user put there could write anything to our
     * terminal.
     *
     * @throws NoWatch where none runs
     */
    static SocketChannel connect(Path state, String siteId) throws IOException {
        Path path = path(state, siteId);
        Path folder = path.getParent();
        if (folder != null && Files.exists(folder)) {
            OwnFiles.mustBeOurs(folder);
        }
        SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX);
        try {
            channel.connect(UnixDomainSocketAddress.of(path));
            return channel;
        } catch (IOException e) {
            channel.close();
            throw new NoWatch("no watch of " + siteId + " answers in " + state + "; start one with: bywash watch", e);
        }
    }

    /** The sites with a socket, dead ones too. */
    public static List<String> sites(Path state) {
        try (Stream<Path> all = Files.list(state.resolve("run"))) {
            return all.map(p -> p.getFileName().toString())
                    .filter(name -> name.endsWith(TAIL))
                    .map(name -> name.substring(0, name.length() - TAIL.length()))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    /** No watch answers. */
    public static final class NoWatch extends IOException {
        private static final long serialVersionUID = 1L;

        NoWatch(String words, IOException cause) {
            super(words, cause);
        }
    }
}
