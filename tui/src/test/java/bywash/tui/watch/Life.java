package bywash.tui.watch;

import bywash.ingest.journal.Journal;
import bywash.ingest.site.SiteFile;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** One simulated process of a watch: the folder it keeps, and the crash that may befall it at any moment of a round. */
final class Life {
    final Path state;
    final Journal journal;
    final Station station;
    private final String site;
    private @Nullable CrashedFiles powered;
    private @Nullable Crash crash;
    private int fuse = -1;
    private boolean dead;

    /** What is done in the moment of death, when the files have been taken as they were. */
    private record Crash(Path files, SplittableRandom random, Runnable then) {}

    private Life(SiteFile file, Path state, Journal journal, InstantSource clock, long mayWait) {
        this.site = file.site().id();
        this.state = state;
        this.journal = journal;
        this.station = Station.on(file, state, WatchRecord.in(journal, mayWait), journal, clock);
    }

    static Life begin(SiteFile file, Path state, InstantSource clock, long mayWait) throws Exception {
        return new Life(file, state, Journal.open(state, file.site().id(), clock), clock, mayWait);
    }

    /**
     * From here on the process may die.
     *
     * @param files where the next one finds what is left
     * @param moments how many chances pass before it does
     */
    void light(Path files, SplittableRandom random, int moments, Runnable then) {
        powered = random.nextInt(3) == 0 ? new CrashedFiles(state, site) : null;
        crash = new Crash(files, random, then);
        fuse = moments;
    }

    /** All that was written is on the disk. */
    void synced() {
        if (powered != null) {
            powered.sync();
        }
    }

    /** One of the moments of a round at which a process may die. */
    void moment() {
        if (fuse >= 0 && fuse-- == 0) {
            die();
        }
    }

    void die() {
        Crash c = crash;
        if (dead || c == null) {
            return;
        }
        dead = true;
        fuse = -1;
        if (powered == null) {
            CrashedFiles.killed(state, c.files());
        } else {
            powered.powerFailed(c.files(), c.random());
        }
        c.then().run();
    }

    boolean dead() {
        return dead;
    }

    String death() {
        return powered == null ? "killed" : "power lost";
    }
}
