package bywash.tui.command;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.rules.event.OperatorEntry;
import bywash.tui.screen.DisplaySettings;
import bywash.tui.screen.NoTerminalException;
import bywash.tui.screen.TerminalSession;
import bywash.tui.view.EventLog;
import bywash.tui.view.Frame;
import bywash.tui.view.HistorySource;
import bywash.tui.view.Losses;
import bywash.tui.view.TrendBuffer;
import bywash.tui.watch.FrameSource;
import bywash.tui.watch.Pipeline;
import bywash.tui.watch.ReplayWatch;
import bywash.tui.watch.Station;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Runs a watch under the screen. */
final class ScreenRun {
    private ScreenRun() {}

    static int replay(SiteFile file, List<RecordedLine> lines, double times, PrintWriter err) throws IOException {
        if (lines.isEmpty()) {
            err.println("the recording holds no line that can be played");
            return ExitCode.RECORDING;
        }
        TrendBuffer trends = new TrendBuffer(Station.TREND_VALUES);
        EventLog log = new EventLog();
        Pipeline pipeline = new Pipeline(file, log::alarm, r -> trends.add(r.probe(), r.at(), r.value()));
        pipeline.onEntry(log::entry);
        ReplayWatch watch = new ReplayWatch(pipeline, lines, times);
        Thread loop = daemon(watch, "replay");
        loop.start();
        int code = show(() -> frame(watch.latest(), trends, log), watch::enter, err);
        watch.stop();
        return code;
    }

    static Frame frame(FrameSource source, HistorySource trends, EventLog log) {
        return new Frame(
                source.snapshot(),
                trends,
                log,
                source.now(),
                new Losses(source.dropped(), source.refused(), source.late()),
                source.safeReserves(),
                source.note());
    }

    /** Shows frames until the grower leaves; a missing terminal is said and is a matter of usage. */
    static int show(Supplier<Frame> frames, Consumer<OperatorEntry> entries, PrintWriter err) throws IOException {
        try {
            new TerminalSession(DisplaySettings.from(System.getenv())).run(frames, entries);
            return ExitCode.GOOD;
        } catch (NoTerminalException e) {
            err.println(e.getMessage());
            return ExitCode.USAGE;
        }
    }

    static Thread daemon(Runnable task, String name) {
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }
}
