package bywash.ingest.recording;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reads one line: a message or an operator entry, also as the stock MQTT client's JSON output has it (tst for time, retain
 * as 0 or 1, a payload that may be any JSON value). Keys it does not know are passed over. One parser serves many lines.
 */
final class LineParser {
    private static final String MESSAGE_RIGHT = "an object with time, topic and payload, or with time and operator";
    private static final byte[] NOTHING = {};

    /** As {@link RecordingWriter} has them. */
    private static final List<SerializableString> USUAL = Stream.of("time", "topic", "payload", "qos", "retain")
            .<SerializableString>map(SerializedString::new)
            .toList();

    private @Nullable String time;
    private @Nullable String topic;
    private byte @Nullable [] payload;
    private int qos;
    private boolean retain;
    private @Nullable Map<String, Object> others;

    RecordedLine parse(byte[] line, int offset, int length) throws BrokenEntry {
        time = null;
        topic = null;
        payload = null;
        qos = 0;
        retain = false;
        others = null;
        try (JsonParser p = JsonLines.FACTORY.createParser(line, offset, length)) {
            if (p.nextToken() != JsonToken.START_OBJECT) {
                throw new BrokenEntry("the line is not a JSON object", MESSAGE_RIGHT);
            }
            int next = 0;
            for (String key = key(p, next); key != null; key = key(p, next)) {
                field(p, key);
                next = Math.min(next + 1, USUAL.size() - 1);
            }
            if (p.nextToken() != null) {
                throw new BrokenEntry("something follows the object", "one object a line");
            }
        } catch (JsonProcessingException e) {
            throw new BrokenEntry("not JSON: " + JsonLines.shown(e.getOriginalMessage()), MESSAGE_RIGHT);
        } catch (IOException e) {
            throw new BrokenEntry("not UTF-8 text: " + JsonLines.shown(String.valueOf(e.getMessage())), MESSAGE_RIGHT);
        }
        return line();
    }

    /** The next key; null after the last. Keys in the usual order are told by their bytes, without being read. */
    private static @Nullable String key(JsonParser p, int next) throws IOException {
        SerializableString usual = USUAL.get(next);
        return p.nextFieldName(usual)
                ? usual.getValue()
                : p.currentToken() == JsonToken.FIELD_NAME ? p.currentName() : null;
    }

    private void field(JsonParser p, String key) throws IOException, BrokenEntry {
        JsonToken token = p.nextToken();
        switch (key) {
            case "time", "tst" -> time = token == JsonToken.VALUE_STRING ? p.getText() : p.getValueAsString("");
            case "topic" -> topic = string(p, key);
            case "payload" -> payload = payload(p);
            case "payload64" -> payload = base64(string(p, key));
            case "qos" -> qos = qos(p);
            case "retain" -> retain = retain(p);
            default -> other(p, key);
        }
    }

    private RecordedLine line() throws BrokenEntry {
        Instant at = time == null ? null : IsoTime.parse(time);
        if (at == null) {
            throw new BrokenEntry(
                    time == null ? "the line has no time" : "\"" + JsonLines.shown(time) + "\" is not a time",
                    "a time such as 2026-05-04T06:00:10.000Z");
        }
        if (topic != null && payload != null) {
            return new RecordedLine.Message(at, topic, payload, qos, retain);
        }
        Object word = others == null ? null : others.get("operator");
        if (others != null && word instanceof String operator) {
            return new RecordedLine.Entry(EntryReader.read(at, operator, others));
        }
        RecordedLine state = others == null ? null : StateLines.read(at, others);
        if (state != null) {
            return state;
        }
        throw new BrokenEntry(
                topic != null ? "the message has no payload" : "the line has neither topic nor operator",
                MESSAGE_RIGHT);
    }

    private static String string(JsonParser p, String key) throws IOException, BrokenEntry {
        if (p.currentToken() != JsonToken.VALUE_STRING) {
            throw new BrokenEntry("\"" + key + "\" is not a text", "a text in quotes");
        }
        return p.getText();
    }

    private static byte[] payload(JsonParser p) throws IOException {
        JsonToken token = p.currentToken();
        if (token == JsonToken.VALUE_STRING) {
            return p.getText().getBytes(StandardCharsets.UTF_8);
        }
        if (token == JsonToken.VALUE_NULL) {
            return NOTHING;
        }
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        try (JsonGenerator g = JsonLines.FACTORY.createGenerator(text)) {
            g.copyCurrentStructureExact(p);
        }
        return text.toByteArray();
    }

    private static byte[] base64(String text) throws BrokenEntry {
        try {
            return Base64.getDecoder().decode(text);
        } catch (IllegalArgumentException e) {
            throw new BrokenEntry("\"payload64\" is not base64", "base64 as in RFC 4648");
        }
    }

    private static int qos(JsonParser p) throws IOException, BrokenEntry {
        int value = p.currentToken() == JsonToken.VALUE_NUMBER_INT ? p.getValueAsInt(-1) : -1;
        if (value < 0 || value > 2) {
            throw new BrokenEntry("\"qos\" is not a quality of service", "0, 1 or 2");
        }
        return value;
    }

    private static boolean retain(JsonParser p) throws IOException, BrokenEntry {
        JsonToken token = p.currentToken();
        if (token == JsonToken.VALUE_TRUE || token == JsonToken.VALUE_FALSE) {
            return token == JsonToken.VALUE_TRUE;
        }
        int value = token == JsonToken.VALUE_NUMBER_INT ? p.getValueAsInt(-1) : -1;
        if (value < 0 || value > 1) {
            throw new BrokenEntry("\"retain\" is not a yes or no", "true, false, 0 or 1");
        }
        return value == 1;
    }

    private void other(JsonParser p, String key) throws IOException {
        if (others == null) {
            others = new LinkedHashMap<>();
        }
        Object value = value(p);
        if (value != null) {
            others.put(key, value);
        }
    }

    /** A text, a number, a flag or a flat list of these; null for null and for objects. */
    private static @Nullable Object value(JsonParser p) throws IOException {
        JsonToken token = p.currentToken();
        switch (token) {
            case VALUE_STRING:
                return p.getText();
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT:
                return p.getDecimalValue();
            case VALUE_TRUE, VALUE_FALSE:
                return token == JsonToken.VALUE_TRUE;
            case START_ARRAY:
                List<Object> list = new ArrayList<>();
                while (p.nextToken() != JsonToken.END_ARRAY) {
                    Object element = value(p);
                    list.add(element == null ? "" : element);
                }
                return list;
            default:
                p.skipChildren();
                return null;
        }
    }
}
