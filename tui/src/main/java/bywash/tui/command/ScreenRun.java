package bywash.tui.command;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import java.io.PrintWriter;
import java.util.List;

/** Runs a feed under the screen. */
final class ScreenRun {
    private ScreenRun() {}

    static int replay(SiteFile file, List<RecordedLine> lines, double times, PrintWriter err) {
        err.println("not yet " + file.site().id() + lines.size() + times);
        return ExitCode.OUR_FAULT;
    }
}
