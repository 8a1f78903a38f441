package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmState;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What the journal keeps of one alarm, as a JSON object, and back. */
final class AlarmMemoryJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private AlarmMemoryJson() {}

    static String of(AlarmMemory m) {
        ObjectNode node = JSON.createObjectNode();
        node.put("alarm", m.kind().word());
        node.put("subject", m.subject());
        node.put("state", m.state().word());
        node.put("incident", m.incident());
        put(node, "raised", m.raisedAt());
        put(node, "announced", m.announcedAt());
        node.put("announcements", m.announcements());
        put(node, "hidden-until", m.hiddenUntil());
        node.put("message", m.message());
        node.put("why", m.why());
        return node.toString();
    }

    private static void put(ObjectNode node, String key, @Nullable Instant time) {
        if (time != null) {
            node.put(key, IsoTime.format(time));
        }
    }

    /** Empty where the text is no such object, or names an alarm or a state that this program does not know. */
    static Optional<AlarmMemory> read(String text) {
        JsonNode node;
        try {
            node = JSON.readTree(text);
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
        AlarmKind kind = AlarmKind.of(node.path("alarm").asText()).orElse(null);
        AlarmState state = AlarmState.of(node.path("state").asText()).orElse(null);
        if (kind == null || state == null) {
            return Optional.empty();
        }
        return Optional.of(new AlarmMemory(
                kind,
                node.path("subject").asText(),
                state,
                node.path("incident").asText(),
                time(node, "raised"),
                time(node, "announced"),
                node.path("announcements").asInt(),
                time(node, "hidden-until"),
                node.path("message").asText(),
                node.path("why").asText()));
    }

    private static @Nullable Instant time(JsonNode node, String key) {
        return node.hasNonNull(key) ? IsoTime.parse(node.path(key).asText()) : null;
    }
}
