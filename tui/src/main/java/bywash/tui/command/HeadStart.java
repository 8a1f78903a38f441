package bywash.tui.command;

import bywash.ingest.journal.Journal;
import bywash.tui.screen.ScreenModel;
import bywash.tui.screen.Screens;
import bywash.tui.view.EventLog;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.view.TrendBuffer;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Set;

/**
 * Fetches what a watch needs in any case while its words and its site file are still being read: SQLite's native library,
 * which is unpacked from the jar at each start, and the classes that the first screen takes, by drawing the demo's site once
 * where nobody sees it. Only where there is a second processor to do it.
 */
final class HeadStart {
    private HeadStart() {}

    static void forCommand(String... args) {
        if (args.length == 0 || !args[0].equals("watch") || Runtime.getRuntime().availableProcessors() < 2) {
            return;
        }
        ScreenRun.daemon(Journal::loadLibrary, "head start: journal").start();
        if (!List.of(args).contains("--headless")) {
            ScreenRun.daemon(HeadStart::rehearse, "head start: screen").start();
        }
    }

    /** Draws one screen of nothing. */
    static void rehearse() {
        try {
            Pipeline pipeline = new Pipeline(DemoCommand.site(), transition -> {}, reading -> {});
            Frame frame = new Frame(
                    pipeline.snapshot(), new TrendBuffer(1), new EventLog(), Instant.EPOCH, Losses.NONE, Set.of(), "");
            Screens.draw(frame, new ScreenModel(), true, 80, 24);
        } catch (IOException e) {
            // The demo's site is missing from the program: the watch starts all the same.
        }
    }
}
