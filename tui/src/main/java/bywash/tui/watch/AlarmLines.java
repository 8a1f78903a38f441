package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.ingest.text.PlainText;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.Priority;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Alarm lines: one JSON object a transition, keys always in the same order. */
public final class AlarmLines {
    private static final JsonFactory JSON = new JsonFactory();
    private static final ObjectMapper READER = new ObjectMapper(JSON);

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
        return PlainText.escaped(text.toString());
    }

    /** Reads a line back; empty where it is none, or names an alarm or a state that this program does not know. */
    public static Optional<AlarmTransition> read(String line) {
        JsonNode node;
        try {
            node = READER.readTree(line);
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
        Instant at = IsoTime.parse(node.path("time").asText());
        AlarmKind kind = AlarmKind.of(node.path("alarm").asText()).orElse(null);
        AlarmState state = AlarmState.of(node.path("state").asText()).orElse(null);
        if (at == null || kind == null || state == null) {
            return Optional.empty();
        }
        Map<String, Object> values = new LinkedHashMap<>();
        node.path("values").fields().forEachRemaining(f -> values.put(f.getKey(), value(f.getValue())));
        return Optional.of(new AlarmTransition(
                at,
                kind,
                node.path("subject").asText(),
                state,
                priority(node.path("priority").asText(), kind),
                node.path("incident").asText(),
                node.path("message").asText(),
                values));
    }

    private static Object value(JsonNode value) {
        if (value.isNull()) {
            return Double.NaN;
        }
        return value.isNumber() ? (Object) value.doubleValue() : value.asText();
    }

    private static Priority priority(String word, AlarmKind kind) {
        for (Priority priority : Priority.values()) {
            if (priority.word().equals(word)) {
                return priority;
            }
        }
        return kind.priority();
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
