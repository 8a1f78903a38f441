package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/** Alarm lines: one JSON object a transition, keys always in the same order. */
public final class AlarmLines {
    private static final JsonFactory JSON = new JsonFactory();
    private static final ObjectMapper READER = new ObjectMapper();

    private AlarmLines() {}

    /** The line without its end. */
    public static String of(String site, AlarmTransition t) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("time", IsoTime.format(t.at()));
            json.writeStringField("site", site);
            json.writeStringField("alarm", t.kind().word());
            json.writeStringField("subject", t.subject());
            json.writeStringField("state", t.state().word());
            json.writeStringField("priority", t.priority().word());
            json.writeStringField("incident", t.incident());
            json.writeStringField("message", t.message());
            json.writeObjectFieldStart("values");
            for (Map.Entry<String, Object> value : t.values().entrySet()) {
                write(json, value.getKey(), value.getValue());
            }
            json.writeEndObject();
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** The transition of a line, of its values only whether it is a repeated call; empty where it is none. */
    static Optional<AlarmTransition> read(String line) {
        try {
            JsonNode node = READER.readTree(line);
            Instant at = IsoTime.parse(node.path("time").asText());
            Optional<AlarmKind> kind = AlarmKind.of(node.path("alarm").asText());
            Optional<AlarmState> state = AlarmState.of(node.path("state").asText());
            if (at == null || kind.isEmpty() || state.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(new AlarmTransition(
                    at,
                    kind.get(),
                    node.path("subject").asText(),
                    state.get(),
                    kind.get().priority(),
                    node.path("incident").asText(),
                    node.path("message").asText(),
                    again(node.path("values").path(AlarmTransition.ANNOUNCEMENT))));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static Map<String, Object> again(JsonNode announcement) {
        return announcement.isNumber() ? Map.of(AlarmTransition.ANNOUNCEMENT, announcement.asDouble()) : Map.of();
    }

    private static void write(JsonGenerator json, String key, Object value) throws IOException {
        if (value instanceof Double number) {
            if (!Double.isFinite(number)) {
                json.writeNullField(key);
            } else if (number == StrictMath.rint(number) && StrictMath.abs(number) < 1e15) {
                json.writeNumberField(key, number.longValue());
            } else {
                json.writeNumberField(key, number);
            }
        } else if (value instanceof Instant at) {
            json.writeStringField(key, IsoTime.format(at));
        } else {
            json.writeStringField(key, value.toString());
        }
    }
}
