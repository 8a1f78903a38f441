package bywash.bench;

import bywash.ingest.feed.SteadyClock;
import bywash.ingest.mqtt.FeedState;
import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import bywash.tui.watch.Rehearsal;
import bywash.tui.watch.Station;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** A whole watch, journal and all, on a real broker. */
final class BenchWatch implements AutoCloseable {
    final SteadyClock clock = new SteadyClock();
    final Station station;
    private final SiteFile file;
    private final Thread loop;
    private @Nullable MqttFeed feed;

    BenchWatch(SiteFile file, Path state) throws Exception {
        this.file = file;
        this.station = Station.open(file, state, clock);
        this.loop = new Thread(station.watch(), "watch");
    }

    /** Returns once the feed is up. */
    void start() throws InterruptedException {
        CountDownLatch up = new CountDownLatch(1);
        List<String> topics =
                file.bindings().stream().map(ProbeBinding::topic).distinct().toList();
        loop.start();
        Rehearsal.later();
        MqttFeed live = new MqttFeed(file.broker(), topics, station.queue(), clock, state -> {
            station.watch().feed(state);
            if (state.phase() == FeedState.Phase.UP) {
                up.countDown();
            }
        });
        feed = live;
        live.start();
        if (!up.await(20, TimeUnit.SECONDS)) {
            throw new IllegalStateException("no connection: " + live.state());
        }
    }

    @Override
    public void close() throws Exception {
        if (feed != null) {
            feed.close();
        }
        station.watch().stop();
        loop.join();
    }
}
