package bywash.ingest.recording;

import bywash.rules.event.OperatorEntry;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * One operator entry as the JSON object that stands in recordings and in the journal, and back. Values carry their units in
 * the text: {@code {"time":"2026-05-05T09:00:00.000Z","operator":"top-up-start","vessel":"sump","volume":"160 L",...}}.
 */
public final class EntryJson {
    private EntryJson() {}

    /** One object, no line end. */
    public static String toJson(OperatorEntry entry) {
        StringWriter text = new StringWriter();
        try (JsonGenerator g = JsonLines.FACTORY.createGenerator(text)) {
            EntryWriter.write(g, entry);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Reads one object.
     *
     * @throws BrokenEntry where the text is no operator entry
     */
    public static OperatorEntry fromJson(String json) throws BrokenEntry {
        byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
        if (new LineParser().parse(bytes, 0, bytes.length) instanceof RecordedLine.Entry line) {
            return line.entry();
        }
        throw new BrokenEntry("this is a message, not an operator entry", "an object with time and operator");
    }
}
