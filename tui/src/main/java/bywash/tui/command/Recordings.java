package bywash.tui.command;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.text.PlainText;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** Reads the recordings that a command was given, one after another. */
final class Recordings {
    private static final int LONGEST = 800;

    private Recordings() {}

    /** Hands on every line of every file; false when one cannot be read, which has then been said. */
    static boolean read(List<Path> files, PrintWriter err, Consumer<RecordedLine> to) {
        for (Path path : files) {
            try (RecordingReader reader = RecordingReader.open(path, Broken.to(path, err))) {
                for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                    to.accept(line);
                }
            } catch (IOException e) {
                err.println(PlainText.of(
                        path + ": cannot be read: " + e.getMessage() + "; give a recording (.jsonl or .jsonl.gz)",
                        LONGEST));
                return false;
            }
        }
        return true;
    }
}
