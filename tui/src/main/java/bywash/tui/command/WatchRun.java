package bywash.tui.command;

import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import bywash.rules.event.OperatorEntry;
import bywash.tui.attach.WatchHost;
import bywash.tui.attach.WatchServer;
import bywash.tui.view.Frame;
import bywash.tui.watch.LiveWatch;
import bywash.tui.watch.Rehearsal;
import bywash.tui.watch.Station;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * A watch under way: the feed, the loop, and the socket for those who attach. However it ends, by key, by a signal or by a
 * fault, what stands open is closed in turn, the journal last.
 */
final class WatchRun implements AutoCloseable {
    private static final long GOODBYE_MS = 3000;
    /** The feed waits for the first screen, which it would slow down, but no longer: a terminal may take nothing. */
    private static final long SCREEN_WITHIN_MS = 1000;

    private final Station station;
    private final Thread loop;
    private final Deque<AutoCloseable> open;
    private boolean closed;

    /** What stands open; closed in turn, the last first. */
    static final class Parts {
        private final Deque<AutoCloseable> open = new ArrayDeque<>();
        private final InstantSource clock;

        /** @param clock of the whole watch: whole milliseconds, never backwards */
        Parts(InstantSource clock) {
            this.clock = clock;
        }

        InstantSource clock() {
            return clock;
        }

        synchronized void add(AutoCloseable part) {
            open.push(part);
        }
    }

    private WatchRun(Station station, Parts parts) {
        this.station = station;
        this.open = parts.open;
        this.loop = ScreenRun.daemon(station.watch(), "watch");
    }

    /**
     * Starts everything; a socket that cannot be had is said and is no reason to stop.
     *
     * @param shown is complete when the first screen is out, or none will be
     */
    static WatchRun start(
            SiteFile file, Station station, Path state, Parts parts, CompletableFuture<Void> shown, PrintWriter err) {
        WatchRun run = new WatchRun(station, parts);
        LiveWatch watch = station.watch();
        List<String> topics =
                file.bindings().stream().map(ProbeBinding::topic).distinct().toList();
        Runtime.getRuntime().addShutdownHook(new Thread(run::closeByHook, "stop watch"));
        run.loop.start();
        GiveBack.begin();
        Rehearsal.later();
        parts.add(new MqttFeed(file.broker(), topics, station.queue(), parts.clock(), watch::feed)
                .start(shown.completeOnTimeout(null, SCREEN_WITHIN_MS, TimeUnit.MILLISECONDS)));
        try {
            parts.add(WatchServer.start(state, file.site().id(), run.host()));
        } catch (IOException e) {
            err.println("nobody can attach to this watch: " + e.getMessage());
            err.flush();
        }
        return run;
    }

    private WatchHost host() {
        return new WatchHost() {
            @Override
            public Frame frame() {
                return WatchRun.this.frame();
            }

            @Override
            public CompletableFuture<Boolean> enter(OperatorEntry entry) {
                return station.watch().enter(entry);
            }
        };
    }

    Frame frame() {
        return ScreenRun.frame(
                station.watch().latest(),
                station.past().trends(),
                station.past().log());
    }

    CompletableFuture<Boolean> enter(OperatorEntry entry) {
        return station.watch().enter(entry);
    }

    /** Until the watch ends. */
    void await() throws InterruptedException {
        loop.join();
    }

    private void closeByHook() {
        close();
        LogFile.end();
    }

    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        for (AutoCloseable part : open) {
            try {
                part.close();
            } catch (Exception e) {
                LOG.warn("not closed", e);
            }
        }
        station.watch().stop();
        try {
            loop.join(GOODBYE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static final org.slf4j.Logger LOG = org.slf4j.LoggerFactory.getLogger(WatchRun.class);
}
