package bywash.tui.command;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.tui.screen.DisplaySettings;
import bywash.tui.screen.Entries;
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
        ReplayWatch watch = new ReplayWatch(
                raised -> {
                    Pipeline pipeline = new Pipeline(
                            file,
                            t -> {
                                log.alarm(t);
                                raised.accept(t);
                            },
                            r -> trends.add(r.probe(), r.at(), r.value()));
                    pipeline.onEntry(log::entry);
                    return pipeline;
                },
                lines,
                times);
        Thread loop = daemon(watch, "replay");
        loop.start();
        int code = show(
                () -> {
                    ReplayWatch.Position position = watch.latest();
                    return frame(position.frame(), trends, log).at(position.playback());
                },
                Entries.unkept(watch::enter),
                new TerminalSession(DisplaySettings.from(System.getenv()), watch::control),
                err);
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
    static int show(Supplier<Frame> frames, Entries entries, PrintWriter err) throws IOException {
        return show(frames, entries, new TerminalSession(DisplaySettings.from(System.getenv())), err);
    }

    /**
     * The same.
     *
     * @param shown is run once the first screen is out
     */
    static int show(Supplier<Frame> frames, Entries entries, Runnable shown, PrintWriter err) throws IOException {
        TerminalSession session = new TerminalSession(DisplaySettings.from(System.getenv()));
        session.onFirstScreen(shown);
        return show(frames, entries, session, err);
    }

    private static int show(Supplier<Frame> frames, Entries entries, TerminalSession session, PrintWriter err)
            throws IOException {
        try {
            session.run(frames, entries);
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
