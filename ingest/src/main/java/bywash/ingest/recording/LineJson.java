package bywash.ingest.recording;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** One recorded line of any kind as the JSON object that stands in recordings, and back. */
public final class LineJson {
    private LineJson() {}

    /** One object, no line end. */
    public static String toJson(RecordedLine line) {
        StringWriter text = new StringWriter();
        try (JsonGenerator g = JsonLines.FACTORY.createGenerator(text)) {
            RecordingWriter.write(g, line);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Reads one object.
     *
     * @throws BrokenEntry where the text is no line of a recording
     */
    public static RecordedLine fromJson(String json) throws BrokenEntry {
        byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
        return new LineParser().parse(bytes, 0, bytes.length);
    }
}
