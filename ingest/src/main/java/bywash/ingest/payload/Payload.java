package bywash.ingest.payload;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One message's payload; what several probes read of it is parsed once. */
final class Payload {
    private final byte[] bytes;
    private final Instant receivedAt;
    private final boolean retained;
    private final List<Channel> channels;
    private @Nullable JsonNode tree;
    private @Nullable List<SenMlRecord> senMl;
    private @Nullable PayloadFault fault;

    Payload(byte[] bytes, Instant receivedAt, boolean retained, List<Channel> channels) {
        this.bytes = bytes;
        this.receivedAt = receivedAt;
        this.retained = retained;
        this.channels = channels;
    }

    byte[] bytes() {
        return bytes;
    }

    Instant receivedAt() {
        return receivedAt;
    }

    /** Whether the broker kept it from a time that nobody knows. */
    boolean retained() {
        return retained;
    }

    JsonNode tree() throws PayloadFault {
        if (tree == null) {
            try {
                JsonNode read = BoundedJson.MAPPER.readTree(bytes);
                tree = read == null ? MissingNode.getInstance() : read;
            } catch (IOException e) {
                throw new PayloadFault("the payload is not JSON");
            }
        }
        return tree;
    }

    List<SenMlRecord> senMl() throws PayloadFault {
        if (fault != null) {
            throw fault;
        }
        if (senMl == null) {
            try {
                senMl = SenMlPack.read(bytes);
            } catch (PayloadFault e) {
                fault = e;
                throw e;
            }
        }
        return senMl;
    }

    /** Whether another probe on the topic found its record: then this pack was not meant for all of them. */
    boolean wantedByAnother(Channel one) throws PayloadFault {
        for (Channel channel : channels) {
            if (channel != one && channel.matches(senMl())) {
                return true;
            }
        }
        return false;
    }
}
