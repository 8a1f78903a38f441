package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.mqtt.FeedState.Phase;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Brokers that know 3.1.1 only, as a few lines of bytes: one says so, one just hangs up. */
@Timeout(60)
class OldBrokerTest {
    /** What the old broker does with a CONNECT of MQTT 5. */
    enum Manner {
        /** Answers as OASIS MQTT 3.1.1 section 3.2.2.3 has it: return code 1, then closes. */
        ANSWERS,
        /** Closes without a word. */
        HANGS_UP
    }

    private final States states = new States();
    private final InboundQueue queue = new InboundQueue();

    @ParameterizedTest
    @EnumSource
    void fallsBackTo311AndStaysThere(Manner manner) throws Exception {
        try (OldBroker broker = new OldBroker(manner);
                MqttFeed feed = states.feed(States.broker("mqtt://127.0.0.1:" + broker.port()), queue, "a/#")) {
            assertTrue(states.await(Phase.UP).detail().endsWith("MQTT 3.1.1"));
            assertEquals("7.1", States.text(States.take(queue, 1).get(0)));
            broker.hangUp();
            states.await(Phase.LOST);
            states.await(Phase.UP);
            assertEquals("7.1", States.text(States.take(queue, 1).get(0)));
            assertEquals(List.of(5, 4, 4), broker.asked);
            assertEquals(Phase.UP, feed.state().phase());
        }
    }

    /** Accepts one client at a time; takes CONNECT and SUBSCRIBE, then sends one message. */
    private static final class OldBroker implements AutoCloseable {
        final List<Integer> asked = new CopyOnWriteArrayList<>();
        private final ServerSocket socket = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        private final Manner manner;
        private volatile Socket client = new Socket();

        OldBroker(Manner manner) throws IOException {
            this.manner = manner;
            Thread thread = new Thread(this::serve, "old-broker");
            thread.setDaemon(true);
            thread.start();
        }

        int port() {
            return socket.getLocalPort();
        }

        void hangUp() throws IOException {
            client.close();
        }

        private void serve() {
            while (!socket.isClosed()) {
                try (Socket c = socket.accept()) {
                    client = c;
                    talk(new DataInputStream(c.getInputStream()), c.getOutputStream());
                } catch (IOException e) {
                    // the client or the test has gone: wait for the next
                }
            }
        }

        private void talk(DataInputStream in, OutputStream out) throws IOException {
            int version = packet(in)[6];
            asked.add(version);
            if (version != 4) {
                if (manner == Manner.ANSWERS) {
                    out.write(new byte[] {0x20, 2, 0, 1});
                }
                return;
            }
            out.write(new byte[] {0x20, 2, 0, 0});
            byte[] subscribe = packet(in);
            out.write(new byte[] {(byte) 0x90, 3, subscribe[0], subscribe[1], 1});
            out.write(new byte[] {0x30, 8, 0, 3});
            out.write("a/b7.1".getBytes(StandardCharsets.US_ASCII));
            while (in.read() >= 0) {
                // until it goes
            }
        }

        /** The body of the next packet; all are shorter than 128 bytes here. */
        private static byte[] packet(DataInputStream in) throws IOException {
            in.readUnsignedByte();
            return in.readNBytes(in.readUnsignedByte());
        }

        @Override
        public void close() throws IOException {
            socket.close();
            client.close();
        }
    }
}
