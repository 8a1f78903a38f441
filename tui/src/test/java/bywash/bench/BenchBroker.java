package bywash.bench;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;

/** A real Mosquitto for a benchmark. */
final class BenchBroker implements AutoCloseable {
    private static final Path PROGRAM = Path.of("/usr/sbin/mosquitto");
    final int port;
    private final Process process;

    static boolean installed() {
        return Files.isExecutable(PROGRAM);
    }

    BenchBroker(Path dir) throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        String user = "root".equals(System.getProperty("user.name")) ? "user root\n" : "";
        Path conf = Files.writeString(
                dir.resolve("broker.conf"),
                "listener " + port + " 127.0.0.1\nallow_anonymous true\nmax_queued_messages 0\n" + user);
        process = new ProcessBuilder(PROGRAM.toString(), "-c", conf.toString())
                .redirectErrorStream(true)
                .redirectOutput(dir.resolve("broker.log").toFile())
                .start();
        awaitPort(Duration.ofSeconds(10));
    }

    private void awaitPort(Duration patience) throws IOException {
        long end = System.nanoTime() + patience.toNanos();
        while (System.nanoTime() < end) {
            try (Socket socket = new Socket()) {
                socket.connect(new InetSocketAddress("127.0.0.1", port), 200);
                return;
            } catch (IOException e) {
                Thread.onSpinWait();
            }
        }
        throw new IOException("the broker did not start");
    }

    @Override
    public void close() {
        process.destroy();
    }
}
