package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.ingest.mqtt.FeedState.Phase;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What a broker in good order does not do on demand: refusing topics, and falling silent with the line open. */
@Timeout(60)
class ByteBrokerTest {
    private static final int GRANTED = 1;
    /** "Not authorized", OASIS MQTT 5.0 section 3.9.3. */
    private static final int NOT_AUTHORIZED = 0x87;

    private final States states = new States();
    private final InboundQueue queue = new InboundQueue();

    @Test
    void namesTheTopicsThatTheBrokerRefuses() throws Exception {
        try (ByteBroker broker = new ByteBroker(true, GRANTED, NOT_AUTHORIZED);
                MqttFeed feed = states.feed(States.broker(broker.url()), queue, "a", "b")) {
            assertEquals(
                    "broker " + broker.url() + " refused the subscription to b; check its access list",
                    states.await(Phase.UP).detail());
            assertEquals(Phase.UP, feed.state().phase());
        }
    }

    @Test
    void isNotUpWhenEveryTopicIsRefused() throws Exception {
        try (ByteBroker broker = new ByteBroker(true, NOT_AUTHORIZED, NOT_AUTHORIZED);
                MqttFeed feed = states.feed(States.broker(broker.url()), queue, "a", "b")) {
            assertEquals(
                    "broker " + broker.url() + " refused the subscription to a, b; check its access list",
                    states.await(Phase.REFUSED).detail());
            assertEquals(Phase.REFUSED, feed.state().phase());
        }
    }

    /** The broker asks for a keep alive of 1 s (section 3.2.2.3.14) and then answers no ping. */
    @Test
    void aBrokerThatFallsSilentWithTheLineOpenCountsAsLost() throws Exception {
        try (ByteBroker broker = new ByteBroker(false, GRANTED);
                MqttFeed feed = states.feed(States.broker(broker.url()), queue, "a")) {
            states.await(Phase.UP);
            FeedState lost = states.await(Phase.LOST);
            assertEquals(false, lost.up());
            states.await(Phase.UP);
            assertEquals(0, queue.counts().received(), feed.state().detail());
        }
    }

    /** Speaks MQTT 5 to one client after another, as bytes. */
    private static final class ByteBroker implements AutoCloseable {
        private final ServerSocket socket = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        private final boolean answersPings;
        private final int[] codes;
        private volatile Socket client = new Socket();

        ByteBroker(boolean answersPings, int... codes) throws IOException {
            this.answersPings = answersPings;
            this.codes = codes;
            Thread thread = new Thread(this::serve, "byte-broker");
            thread.setDaemon(true);
            thread.start();
        }

        String url() {
            return "mqtt://127.0.0.1:" + socket.getLocalPort();
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
            while (true) {
                int kind = in.readUnsignedByte() >> 4;
                byte[] body = in.readNBytes(in.readUnsignedByte());
                switch (kind) {
                    case 1 -> out.write(new byte[] {0x20, 6, 0, 0, 3, 0x13, 0, 1});
                    case 8 -> {
                        out.write(new byte[] {(byte) 0x90, (byte) (3 + codes.length), body[0], body[1], 0});
                        for (int code : codes) {
                            out.write(code);
                        }
                    }
                    case 12 -> {
                        if (answersPings) {
                            out.write(new byte[] {(byte) 0xD0, 0});
                        }
                    }
                    default -> {
                        return;
                    }
                }
            }
        }

        @Override
        public void close() throws IOException {
            socket.close();
            client.close();
        }
    }
}
