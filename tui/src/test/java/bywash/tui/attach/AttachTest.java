package bywash.tui.attach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.alarm.AlarmState;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.site.Stocking;
import bywash.tui.screen.KeyPress;
import bywash.tui.screen.ScreenModel;
import bywash.tui.screen.Screens;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.watch.FrameSource;
import bywash.tui.watch.Larkfield;
import bywash.tui.watch.Station;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A running watch with an alarm, and callers over its socket. */
@Timeout(20)
class AttachTest {
    private static final String SITE = "larkfield";

    @TempDir
    Path dir;

    private volatile Instant now = Instant.parse("2026-05-04T06:00:00Z");
    private final CountDownLatch acknowledged = new CountDownLatch(1);
    private Station station;
    private Thread loop;
    private WatchServer server;

    @BeforeEach
    void start() throws Exception {
        station = Station.open(Larkfield.site(), dir, () -> now);
        station.outlets().add((t, line) -> {
            if (t.state() == AlarmState.ACKNOWLEDGED) {
                acknowledged.countDown();
            }
        });
        loop = new Thread(station.watch(), "watch");
        loop.start();
        server = WatchServer.start(dir, SITE, new WatchHost() {
            @Override
            public Frame frame() {
                return AttachTest.this.frame();
            }

            @Override
            public CompletableFuture<Boolean> enter(OperatorEntry entry) {
                CompletableFuture<Boolean> kept = station.watch().enter(entry);
                kept.thenRun(() -> now = now.plusSeconds(5)); // past the time that late readings are waited for
                return kept;
            }
        });
        for (int i = 0; i < 8; i++) {
            byte[] low = "{\"oxygen\":{\"mgl\":2}}".getBytes(StandardCharsets.UTF_8);
            station.queue().offer(new Message(now, "larkfield/do", low, 0, false));
            now = now.plusSeconds(10);
        }
        while (station.watch().latest().snapshot().alarms().isEmpty()) {
            Thread.onSpinWait();
        }
    }

    @AfterEach
    void stop() throws Exception {
        server.close();
        station.watch().stop();
        loop.join();
    }

    private Frame frame() {
        FrameSource s = station.watch().latest();
        Station.Past past = station.past();
        return new Frame(s.snapshot(), past.trends(), past.log(), s.now(), Losses.NONE, s.safeReserves(), s.note());
    }

    /** A caller that keeps the bytes of its screen. */
    private static final class Caller implements AutoCloseable {
        private final SocketChannel channel;
        private final InputStream in;
        private final DataOutputStream out;
        private final ByteArrayOutputStream screen = new ByteArrayOutputStream();

        Caller(Path dir, int columns, int rows) throws IOException {
            channel = SocketPlace.connect(dir, SITE);
            in = SocketStreams.input(channel);
            out = new DataOutputStream(SocketStreams.output(channel));
            String hello = Request.toJson(new Request.Attach(columns, rows, false, false)) + "\n";
            out.write(hello.getBytes(StandardCharsets.UTF_8));
            assertTrue(Answer.read(WatchServer.line(in)).good());
        }

        void until(String text) throws IOException {
            while (!screen.toString(StandardCharsets.US_ASCII).contains(text)) {
                int next = in.read();
                assertTrue(next >= 0, "ended before " + text);
                screen.write(next);
            }
            screen.reset();
        }

        void type(String keys) throws IOException {
            byte[] bytes = keys.getBytes(StandardCharsets.US_ASCII);
            KeyFrames.keys(out, bytes, bytes.length);
        }

        /** Reads on to the end; the last byte is given, -1 for none. */
        int last() throws IOException {
            int last = -1;
            for (int next = in.read(); next >= 0; next = in.read()) {
                last = next;
            }
            return last;
        }

        @Override
        public void close() throws IOException {
            channel.close();
        }
    }

    /** An entry reaches the rules seconds after it was taken down: a script enters the next one sooner. */
    @Test
    void anEntryThatBuildsOnTheOneBeforeIsTakenAndWhatIsDoubtfulIsSaid() throws Exception {
        WatchClient shell = new WatchClient(dir, SITE);
        shell.enter(new FishIn(now, "autumn", "nile-tilapia", 30, 200, "fish-tank"));
        assertEquals("", shell.enter(new Harvest(now, "autumn", 2, List.of(168.0, 176.0))));
        IOException more =
                assertThrows(IOException.class, () -> shell.enter(new Harvest(now, "autumn", 40, List.of(), 8000)));
        assertTrue(
                String.valueOf(more.getMessage()).startsWith("cohort autumn has 28 fish, not 40"), more.getMessage());
        String doubt = shell.enter(new StockingChange(now, Stocking.FISHLESS));
        assertTrue(doubt.startsWith("28 fish are on record"), doubt);
    }

    @Test
    void whatOneAcknowledgesAllSee() throws Exception {
        try (Caller one = new Caller(dir, 80, 24);
                Caller other = new Caller(dir, 120, 40)) {
            one.until("low-oxygen");
            other.until("low-oxygen");
            one.type("aa");
            acknowledged.await();
            other.until("ack"); // of "acked", drawn over "new"
        }
    }

    @Test
    void theLogOfACallerReachesBackToWhereTheJournalBegins() throws Exception {
        try (Caller caller = new Caller(dir, 80, 24)) {
            caller.until("low-oxygen");
            caller.type("l");
            caller.until("begins"); // of "The journal begins here."
        }
    }

    @Test
    void whoDropsHarmsNoOneAndWhoLeavesIsToldGoodbye() throws Exception {
        try (Caller stays = new Caller(dir, 80, 24)) {
            stays.until("low-oxygen");
            Caller drops = new Caller(dir, 80, 24);
            drops.until("low-oxygen");
            drops.close();
            stays.type("qy");
            assertEquals(WatchClient.GOODBYE, stays.last());
        }
        try (Caller again = new Caller(dir, 80, 24)) {
            again.until("low-oxygen");
        }
        assertTrue(loop.isAlive());
    }

    @Test
    void saysWhetherTheWatchGoesOnWithoutTheScreen() {
        Frame frame = frame();
        for (boolean goesOn : new boolean[] {true, false}) {
            ScreenModel model = new ScreenModel(goesOn);
            model.handle(KeyPress.of('q'), frame);
            String text = Screens.draw(frame, model, false, 80, 24).text();
            assertEquals(goesOn, text.contains("The watch goes on without this screen."), text);
            assertEquals(!goesOn, text.contains("Without this watch nobody is told of alarms."), text);
        }
    }

    @Test
    void followsTheSizeOfItsTerminal() throws Exception {
        try (Caller caller = new Caller(dir, 80, 24)) {
            caller.until("leave");
            KeyFrames.size(caller.out, 100, 50);
            caller.until("\u001b[50;1H");
        }
    }

    @Test
    void whatIsEnteredFromTheShellIsOnTheDiskAndOnTheScreen() throws Exception {
        new WatchClient(dir, SITE).enter(new OperatorEntry.Acknowledge(now, "low-oxygen", "fish-tank"));
        now = now.plusSeconds(10);
        try (Caller caller = new Caller(dir, 80, 24);
                var journal = bywash.ingest.journal.JournalReader.open(dir, SITE)) {
            assertEquals(1, journal.entries(Instant.EPOCH, now).size());
            caller.until("acked");
        }
    }

    @Test
    void whatNamesNothingOfThisSiteIsRefusedInWords() throws Exception {
        WatchClient client = new WatchClient(dir, SITE);
        IOException e = assertThrows(IOException.class, () -> client.enter(new OperatorEntry.TopUpEnd(now, "pond")));
        assertEquals(
                "vessel \"pond\" is not in the site file; it has sump, reserve, fish-tank, bed-1, bed-2, bed-3",
                e.getMessage());
        e = assertThrows(IOException.class, () -> client.enter(new OperatorEntry.FishLoss(now, "spring", 1, null)));
        assertEquals("cohort spring is not on record; enter fish-in first", e.getMessage());
        e = assertThrows(IOException.class, () -> client.enter(new OperatorEntry.Plant(now, "sump", "lettuce", 0.5)));
        assertEquals("vessel sump is no grow-bed of the site file; it has bed-1, bed-2, bed-3", e.getMessage());
        e = assertThrows(
                IOException.class,
                () -> client.enter(new OperatorEntry.Shelve(now, "no-alarm", "x", Duration.ofHours(1))));
        assertTrue(
                String.valueOf(e.getMessage())
                        .startsWith("alarm \"no-alarm\" is not known; there are unplanned-inflow, "),
                e.getMessage());
        e = assertThrows(
                IOException.class,
                () -> client.enter(new OperatorEntry.OutOfService(now, "low-oxygen", "fishtank", "no spare")));
        assertEquals("subject \"fishtank\" is nothing that low-oxygen is about; here it is fish-tank", e.getMessage());
        e = assertThrows(
                IOException.class, () -> client.enter(new OperatorEntry.StepDone(now, "20260504", "stop-water", "")));
        assertTrue(
                String.valueOf(e.getMessage()).startsWith("incident \"20260504\" is not on record; "), e.getMessage());
    }

    @Test
    void theSocketIsItsOwnersAlone() throws Exception {
        Path socket = dir.resolve("run/larkfield.sock");
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(socket)));
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(dir.resolve("run"))));
    }

    @Test
    void anEndedWatchIsSaid() throws Exception {
        Caller caller = new Caller(dir, 80, 24);
        caller.until("low-oxygen");
        server.close();
        assertFalse(caller.last() == WatchClient.GOODBYE);
        IOException e = assertThrows(SocketPlace.NoWatch.class, () -> SocketPlace.connect(dir, SITE));
        assertEquals("no watch of larkfield answers in " + dir + "; start one with: bywash watch", e.getMessage());
        assertEquals(java.util.List.of(), SocketPlace.sites(dir));
    }

    @Test
    void aRequestThatIsNoneIsRefusedInWords() throws Exception {
        try (SocketChannel channel = SocketPlace.connect(dir, SITE)) {
            SocketStreams.output(channel).write("{\"do\":\"dance\"}\n".getBytes(StandardCharsets.UTF_8));
            Answer answer = Answer.read(WatchServer.line(SocketStreams.input(channel)));
            assertEquals(new Answer(false, "the request is not known; is the watch of an older version?"), answer);
        }
    }
}
