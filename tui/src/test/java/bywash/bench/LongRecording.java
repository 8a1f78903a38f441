package bywash.bench;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.recording.RecordingWriter;
import bywash.samples.SampleRecordings;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** A recording of any length: the quiet sample, again and again, each time a little later. */
final class LongRecording {
    private static final String RESOURCE = "/bywash/samples/recordings/";

    private LongRecording() {}

    /** Writes at least so many lines and returns how many. */
    static long write(Path file, long atLeast) throws IOException {
        List<Message> quiet = quiet();
        Duration length = length(quiet);
        long lines = 0;
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            RecordingWriter writer = new RecordingWriter(out);
            for (int round = 0; lines < atLeast; round++) {
                Duration later = length.multipliedBy(round);
                for (Message m : quiet) {
                    writer.write(new Message(m.time().plus(later), m.topic(), m.payload(), m.qos(), m.retain()));
                    lines++;
                }
            }
            writer.flush();
        }
        return lines;
    }

    /** From its first message to where it may begin again. */
    static Duration length(List<Message> quiet) {
        return Duration.between(quiet.get(0).time(), quiet.get(quiet.size() - 1).time())
                .plusSeconds(10);
    }

    /** The quiet sample's messages. */
    static List<Message> quiet() throws IOException {
        InputStream in =
                SampleRecordings.class.getResourceAsStream(RESOURCE + SampleRecordings.QUIET_SIPHONS.fileName());
        if (in == null) {
            throw new IllegalStateException("the quiet sample is missing");
        }
        List<Message> messages = new ArrayList<>();
        try (RecordingReader reader = new RecordingReader(in, (line, what, right) -> {
            throw new IllegalStateException(line + ": " + what);
        })) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                if (line instanceof Message message) {
                    messages.add(message);
                }
            }
        }
        return messages;
    }
}
