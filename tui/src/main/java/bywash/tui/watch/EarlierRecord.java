package bywash.tui.watch;

import bywash.ingest.mqtt.RetainedPublisher.Retained;
import bywash.rules.alarm.AlarmState;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Alarm lines that the broker still holds of a record that this watch does not have, because its journal was lost. What was normal
 * says nothing and is taken away. What stood is neither known to stand nor known to be over: its line stays, and says that it is
 * of an earlier record. After a day of watching it is taken away, for by then this watch would have raised it itself. Any thread.
 */
final class EarlierRecord {
    static final String WORDS = "Of an earlier record, which this watch does not have: ";
    static final Duration STAYS = Duration.ofHours(24);
    private static final ObjectMapper JSON = new ObjectMapper();

    private final String site;
    private final String topics;
    private final InstantSource clock;
    private final Map<String, Stays> stay = new TreeMap<>();

    private record Stays(Retained marked, Instant until) {}

    /** @param topics what all topics of alarms begin with */
    EarlierRecord(String site, String topics, InstantSource clock) {
        this.site = site;
        this.topics = topics;
        this.clock = clock;
    }

    /** What such a topic is to hold; null for what is no alarm line of this site, which is not ours to change. */
    synchronized @Nullable Retained judge(Retained found) {
        ObjectNode line = line(found);
        if (line == null) {
            return null;
        }
        if (line.path("state").asText().equals(AlarmState.NORMAL.word())) {
            return new Retained(found.topic(), "");
        }
        String message = line.path("message").asText();
        line.put("message", message.startsWith(WORDS) ? message : WORDS + message);
        Retained marked = new Retained(found.topic(), line.toString());
        stay.put(found.topic(), new Stays(marked, clock.instant().plus(STAYS)));
        return marked;
    }

    private @Nullable ObjectNode line(Retained found) {
        try {
            JsonNode node = JSON.readTree(found.payload());
            boolean ours = node instanceof ObjectNode
                    && node.path("site").asText().equals(site)
                    && node.has("state")
                    && found.topic().startsWith(topics + node.path("alarm").asText() + "/");
            return ours ? (ObjectNode) node : null;
        } catch (JsonProcessingException e) {
            return null;
        }
    }

    /** The watch has a line of its own on this topic. */
    synchronized void known(String topic) {
        stay.remove(topic);
    }

    /** Lines that have stayed for long enough, each told once. */
    synchronized List<Retained> over() {
        Instant now = clock.instant();
        List<Retained> over = stay.values().stream()
                .filter(s -> !s.until.isAfter(now))
                .map(s -> s.marked)
                .toList();
        over.forEach(marked -> stay.remove(marked.topic()));
        return over;
    }
}
