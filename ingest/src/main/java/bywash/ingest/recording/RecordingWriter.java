package bywash.ingest.recording;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.Closeable;
import java.io.Flushable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;

/** Writes recorded lines as JSON Lines, UTF-8, keys in a fixed order. Not safe for use by more than one thread. */
public final class RecordingWriter implements Closeable, Flushable {
    private final JsonGenerator json;

    /**
     * Writes to a stream.
     *
     * @param out closed with this writer; wrap it in a GZIPOutputStream for a .gz
     */
    public RecordingWriter(OutputStream out) throws IOException {
        this.json = JsonLines.FACTORY.createGenerator(out);
        this.json.setRootValueSeparator(null);
    }

    public void write(RecordedLine line) throws IOException {
        write(json, line);
        json.writeRaw('\n');
    }

    static void write(JsonGenerator json, RecordedLine line) throws IOException {
        switch (line.kind()) {
            case ENTRY -> EntryWriter.write(json, ((RecordedLine.Entry) line).entry());
            case MESSAGE -> writeMessage(json, (RecordedLine.Message) line);
            case FEED -> writeFeed(json, (RecordedLine.Feed) line);
            case WATCH_STARTED -> writeStart(json, (RecordedLine.WatchStarted) line);
        }
    }

    private static void writeFeed(JsonGenerator json, RecordedLine.Feed f) throws IOException {
        begin(json, f.time());
        json.writeStringField("feed", f.up() ? "up" : "lost");
        json.writeStringField("detail", f.detail());
        json.writeEndObject();
    }

    private static void writeStart(JsonGenerator json, RecordedLine.WatchStarted w) throws IOException {
        begin(json, w.time());
        json.writeStringField("watch", "started");
        json.writeStringField("unwatched-since", IsoTime.format(w.unwatchedSince()));
        json.writeEndObject();
    }

    private static void begin(JsonGenerator json, Instant time) throws IOException {
        json.writeStartObject();
        json.writeStringField("time", IsoTime.format(time));
    }

    private static void writeMessage(JsonGenerator json, RecordedLine.Message m) throws IOException {
        begin(json, m.time());
        json.writeStringField("topic", m.topic());
        String text = new String(m.payload(), StandardCharsets.UTF_8);
        if (text.indexOf('\uFFFD') < 0 || Arrays.equals(text.getBytes(StandardCharsets.UTF_8), m.payload())) {
            json.writeStringField("payload", text);
        } else {
            json.writeFieldName("payload64");
            json.writeBinary(m.payload());
        }
        json.writeNumberField("qos", m.qos());
        json.writeBooleanField("retain", m.retain());
        json.writeEndObject();
    }

    @Override
    public void flush() throws IOException {
        json.flush();
    }

    @Override
    public void close() throws IOException {
        json.close();
    }
}
