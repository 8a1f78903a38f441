package bywash.tui.command;

import bywash.ingest.recording.BrokenLines;
import bywash.ingest.text.PlainText;
import java.io.PrintWriter;
import java.nio.file.Path;

/** Reports broken lines of a recording on standard error. */
final class Broken {
    private Broken() {}

    static BrokenLines to(Path path, PrintWriter err) {
        return (line, what, right) -> err.println(PlainText.of(path + ":" + line + ": " + what + "; " + right, 800));
    }
}
