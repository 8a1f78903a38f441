package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.Writing;
import bywash.rules.event.OperatorEntry;
import bywash.tui.attach.WatchHost;
import bywash.tui.attach.WatchServer;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.watch.FrameSource;
import bywash.tui.watch.Larkfield;
import bywash.tui.watch.Station;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Entries from the shell, with a watch and without one. */
@Timeout(30)
class LogThroughTheWatchTest {
    private static final InstantSource CLOCK = InstantSource.tick(Clock.systemUTC(), Duration.ofMillis(1));

    @TempDir
    Path state;

    private Cli log(Object... words) {
        return Cli.run(Stream.concat(Stream.of("log", "--state", state, "--id", "larkfield"), Stream.of(words))
                .toArray());
    }

    private void aWatchHasRun() throws Exception {
        Journal.open(state, "larkfield", CLOCK).close();
    }

    @Test
    void takesDownWhatWasDoneWithoutAWatchAndListsIt() throws Exception {
        aWatchHasRun();
        Cli entered = log("test", "vessel=reserve", "quantity=total-chlorine", "value=0.02 mg/L");
        assertEquals(0, entered.code(), entered.err());
        assertTrue(
                entered.out()
                        .matches("\\{\"time\":\"[^\"]+Z\",\"operator\":\"test\",\"vessel\":\"reserve\","
                                + "\"quantity\":\"total-chlorine\",\"value\":\"0.02 mg/L\"}\n"),
                entered.out());
        Cli weighed = log("weigh", "cohort=a", "of=sample", "count=2", "masses=412 g,398 g");
        assertEquals(0, weighed.code(), weighed.err());
        Cli listed = log();
        assertEquals(0, listed.code(), listed.err());
        assertEquals(entered.out() + weighed.out(), listed.out());
    }

    @Test
    void theWatchTakesWhatWasEnteredBeforeItsStart() throws Exception {
        aWatchHasRun();
        String earlier = CLOCK.instant().minusSeconds(3600).toString();
        assertEquals(
                0,
                log("batch-fill", "vessel=reserve", "volume=800 L", "--at", earlier)
                        .code());
        assertEquals(
                0,
                log("test", "vessel=reserve", "quantity=total-chlorine", "value=0 mg/L")
                        .code());
        Station station =
                Station.open(Larkfield.site(), state, () -> CLOCK.instant().plusSeconds(60));
        Thread loop = new Thread(station.watch(), "watch");
        loop.start();
        OperatorEntry note = new OperatorEntry.Note(CLOCK.instant().plusSeconds(60), "a round of the loop is over");
        assertTrue(station.watch().enter(note).get());
        station.watch().stop();
        loop.join();
        assertEquals(Set.of("reserve"), station.watch().latest().safeReserves());
    }

    @Test
    void aRunningWatchTakesItAtOnceAndKeepsIt() throws Exception {
        Station station = Station.open(Larkfield.site(), state, CLOCK);
        Thread loop = new Thread(station.watch(), "watch");
        loop.start();
        try (WatchServer server = WatchServer.start(state, "larkfield", host(station))) {
            Cli run = log("note", "text=fish calm");
            assertEquals(0, run.code(), run.err());
            assertEquals(run.out(), log().out());
            Cli wrong = log("top-up-start", "vessel=sump", "source=reserve", "volume=160", "duration=40 min");
            assertEquals(2, wrong.code());
            Cli unknown = log("batch-fill", "vessel=pond", "volume=100 L");
            assertEquals(2, unknown.code());
            assertTrue(unknown.err().contains("pond"), unknown.err());
            assertEquals(run.out(), log().out());
        } finally {
            station.watch().stop();
            loop.join();
        }
    }

    private static WatchHost host(Station station) {
        return new WatchHost() {
            @Override
            public Frame frame() {
                FrameSource s = station.watch().latest();
                return new Frame(
                        s.snapshot(),
                        station.past().trends(),
                        station.past().log(),
                        s.now(),
                        Losses.NONE,
                        s.safeReserves(),
                        s.note());
            }

            @Override
            public CompletableFuture<Boolean> enter(OperatorEntry entry) {
                return station.watch().enter(entry);
            }
        };
    }

    @Test
    void saysWhatIsWrongWithAnEntryAndKeepsNothing() throws Exception {
        aWatchHasRun();
        assertWrong("operator entry \"fede\" is not known; give top-up-start, ", log("fede", "mass=100 g"));
        assertWrong("\"mass\" of feed: \"100\" has no unit", log("feed", "mass=100"));
        assertWrong("in the future", log("note", "text=x", "--at", "2999-01-01T00:00:00Z"));
        assertWrong("\"soon\" is not a time; give ", log("note", "text=x", "--at", "soon"));
        assertEquals("", log().out());
    }

    private static void assertWrong(String part, Cli run) {
        assertEquals(2, run.code(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains(part), run.err());
        assertEquals("", run.out());
    }

    @Test
    void whatTheSiteDoesNotHaveIsRefusedThoughNoWatchRuns() throws Exception {
        try (Journal journal = Journal.open(state, "larkfield", CLOCK)) {
            journal.write(List.of(new Writing.Site(CLOCK.instant(), Larkfield.text())));
        }
        assertWrong(
                "subject \"fishtank\" is nothing that low-oxygen is about; here it is fish-tank",
                log("out-of-service", "alarm=low-oxygen", "subject=fishtank"));
        assertWrong("vessel \"pond\" is not in the site file; it has sump, ", log("top-up-end", "vessel=pond"));
        assertEquals("", log().out());
        assertEquals(
                0,
                log("out-of-service", "alarm=low-oxygen", "subject=fish-tank").code());
    }

    @Test
    void listsSoManyDaysBack() throws Exception {
        aWatchHasRun();
        String old = CLOCK.instant().minusSeconds(10 * 86_400L).toString();
        assertEquals(0, log("note", "text=old", "--at", old).code());
        assertEquals(0, log("note", "text=new").code());
        assertEquals(2, log().out().lines().count());
        assertEquals(1, log("--days", "3").out().lines().count());
    }

    @Test
    void saysThatThereIsNoJournalToList() {
        Cli run = Cli.run("log", "--state", state);
        assertEquals(2, run.code());
        assertEquals("no journal in " + state + "; give --state the folder of a watch\n", run.err());
    }

    @Test
    void asksForTheIdWhereThereAreSeveralSites() throws Exception {
        aWatchHasRun();
        Journal.open(state, "otherfield", CLOCK).close();
        Cli run = Cli.run("log", "--state", state, "note", "text=x");
        assertEquals(2, run.code());
        assertEquals("journals of larkfield, otherfield in " + state + "; name one with --id\n", run.err());
    }

    @Test
    void saysSoWhereAWatchHoldsTheJournalButDoesNotAnswer() throws Exception {
        try (Journal busy = Journal.open(state, "larkfield", CLOCK)) {
            Cli run = log("note", "text=x");
            assertEquals(2, run.code());
            assertEquals("the watch of larkfield runs but does not answer; look at its log\n", run.err());
            assertTrue(busy.state().durable());
        }
    }
}
