package bywash.ingest.payload;

import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Turns messages into readings in the fixed units of the rules. Nothing that a payload holds makes it throw: what cannot be
 * read ends as a refusal with its reason. A payload without a time of its own is taken to be as old as its receipt. Of a
 * retained one nobody knows how old it is: without a time of its own it gives no reading, but for a state, which is sent
 * when it changes and kept for that reason.
 */
public final class ReadingDecoder {
    private final Map<String, List<Channel>> byTopic = new HashMap<>();

    public ReadingDecoder(SiteFile siteFile) {
        for (ProbeBinding binding : siteFile.bindings()) {
            byTopic.computeIfAbsent(binding.topic(), t -> new ArrayList<>())
                    .add(new Channel(
                            binding,
                            siteFile.site().vessel(binding.probe().vessel()).orElse(null)));
        }
    }

    /**
     * Decodes one message for every probe on its topic.
     *
     * @param receivedAt when the message came in; event time of what carries no time
     * @param retain whether the broker kept it from before
     */
    public void decode(Instant receivedAt, String topic, byte[] payload, boolean retain, DecodeSink sink) {
        List<Channel> channels = byTopic.get(topic);
        if (channels == null) {
            sink.unknownTopic(topic);
            return;
        }
        if (retain && payload.length == 0) {
            return; // a retained message was taken back
        }
        if (payload.length > BoundedJson.LARGEST_PAYLOAD) {
            for (Channel channel : channels) {
                sink.refused(channel.probe(), receivedAt, "the payload is larger than 64 KB");
            }
            return;
        }
        Payload shared = new Payload(payload, receivedAt, retain, channels);
        for (int i = 0; i < channels.size(); i++) {
            channels.get(i).decode(shared, sink);
        }
    }
}
