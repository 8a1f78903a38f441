package bywash.tui.attach;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;

/** Streams on a blocking channel. Those of JDK 17 hold one lock for both ways: a reader that waits would keep writers out. */
final class SocketStreams {
    private SocketStreams() {}

    static InputStream input(SocketChannel channel) {
        return new InputStream() {
            @Override
            public int read() throws IOException {
                byte[] one = new byte[1];
                return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
            }

            @Override
            public int read(byte[] into, int offset, int length) throws IOException {
                return length == 0 ? 0 : channel.read(ByteBuffer.wrap(into, offset, length));
            }

            @Override
            public void close() throws IOException {
                channel.close();
            }
        };
    }

    static OutputStream output(SocketChannel channel) {
        return new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                write(new byte[] {(byte) b}, 0, 1);
            }

            @Override
            public void write(byte[] bytes, int offset, int length) throws IOException {
                ByteBuffer buffer = ByteBuffer.wrap(bytes, offset, length);
                while (buffer.hasRemaining()) {
                    channel.write(buffer);
                }
            }

            @Override
            public void close() throws IOException {
                channel.close();
            }
        };
    }
}
