package bywash.ingest.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.InstantSource;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the journal's file open and mends it. Each piece of work opens the file where it is not open; after a fault the next one tries
 * anew; a damaged or exchanged file is set aside, a fresh one begun with what can be read of it, and the work done once more on that. For
 * one thread.
 */
final class OpenJournal implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(OpenJournal.class);

    private final @Nullable JournalFile file;
    private final InstantSource clock;
    private @Nullable JournalStore store;
    private JournalState state;
    private int begunAnew;
    /** A damaged file out of which nothing has been taken over yet. */
    private @Nullable Path unsaved;
    /** Whether the last attempt came so far as to have the file open. */
    private boolean reached;

    private long mostPages;

    OpenJournal(JournalFile file, InstantSource clock) {
        this(file, clock, JournalState.GOOD);
    }

    private OpenJournal(@Nullable JournalFile file, InstantSource clock, JournalState state) {
        this.file = file;
        this.clock = clock;
        this.state = state;
    }

    /** One without a file, that keeps nothing and says why. */
    static OpenJournal none(InstantSource clock, JournalState why) {
        return new OpenJournal(null, clock, why);
    }

    JournalState state() {
        return state;
    }

    /** How often a damaged file was set aside and a new one begun. */
    int begunAnew() {
        return begunAnew;
    }

    /** Where the file is; null where there is none. */
    @Nullable
    Path path() {
        return file == null ? null : file.path();
    }

    /** What is open now; null where nothing is. Work on it that may break it goes through {@link #attempt}. */
    @Nullable
    JournalStore store() {
        return store;
    }

    /** Notes how far the record has come, for the next start. */
    void noteLast(JournalStore s) {
        if (file != null) {
            file.note(new LastKept(s.last(), clock.instant()));
        }
    }

    /** For tests of a full disk: from now on the file may not grow beyond so many pages, nor beyond what it has. */
    void limitPages(long pages) {
        mostPages = pages;
        attempt(s -> s.limitPages(pages));
    }

    interface Work {
        void on(JournalStore store) throws SQLException;
    }

    interface Question<T> {
        T of(JournalStore store) throws SQLException;
    }

    /** Asks; where nothing can be written, a file that can still be read answers. */
    <T> T read(T otherwise, Question<T> question) {
        @SuppressWarnings("unchecked")
        T[] answer = (T[]) new Object[] {otherwise};
        if (!attempt(s -> answer[0] = question.of(s)) && !reached) {
            askThePast(s -> answer[0] = question.of(s));
        }
        return answer[0];
    }

    /** Nothing can be written, not even what SQLite needs to open the file; what it holds must not be forgotten for that. */
    private void askThePast(Work question) {
        if (file == null || !Files.exists(file.path())) {
            return;
        }
        try (Connection db = file.past()) {
            question.on(new JournalStore(db));
        } catch (SQLException e) {
            LOG.warn("the journal cannot be read either", e);
        }
    }

    /** Does the work; where the file is damaged, once more on a fresh one. False where it could not be done. */
    boolean attempt(Work work) {
        if (file == null) {
            return false;
        }
        reached = false;
        for (int round = 0; round < 2; round++) {
            try {
                JournalStore s = store;
                if (s != null && file.tampered()) {
                    throw new JournalFile.Tampered();
                }
                if (s == null) {
                    s = opened(file);
                    if (mostPages > 0) {
                        s.limitPages(mostPages);
                    }
                    store = s;
                }
                reached = true;
                work.on(s);
                if (!state.durable()) {
                    state = JournalState.GOOD;
                }
                return true;
            } catch (SQLException e) {
                drop(e);
                if (!(e instanceof JournalFile.Tampered) && !JournalFault.damaged(e)) {
                    return fail(JournalFault.of(e, file.path()), e);
                }
            } catch (IOException e) {
                return fail(JournalFault.of(e, file.path()), e);
            }
            try {
                unsaved = file.setAside(clock.instant());
            } catch (IOException e) {
                return fail(JournalFault.of(e, file.path()), e);
            }
        }
        return fail(JournalState.beyondHelp(file.path()), null);
    }

    /** Where a damaged one was set aside, with what can be read of it. */
    private JournalStore opened(JournalFile from) throws SQLException, IOException {
        Connection db = from.connect();
        try {
            Path damaged = unsaved;
            JournalState told = null;
            if (damaged != null) {
                told = JournalState.begunAnew(damaged, Salvage.from(damaged, db));
                unsaved = null;
                begunAnew++;
            }
            JournalStore fresh = new JournalStore(db);
            if (told == null) {
                told = from.missing(fresh);
            }
            if (told != null) {
                from.note(new LastKept(fresh.last(), clock.instant())); // is told once
                state = told;
                LOG.warn(state.detail());
            }
            return fresh;
        } catch (SQLException e) {
            db.close();
            throw e;
        }
    }

    private boolean fail(JournalState fault, @Nullable Exception cause) {
        if (!state.equals(fault)) {
            LOG.warn(fault.detail(), cause);
        }
        state = fault;
        return false;
    }

    /** Lets go of the connection after a fault, so that the next append begins afresh. */
    private void drop(SQLException why) {
        JournalStore s = store;
        store = null;
        if (s != null) {
            try {
                s.close();
            } catch (SQLException e) {
                why.addSuppressed(e);
            }
        }
    }

    @Override
    public void close() {
        try {
            if (store != null) {
                store.close();
                store = null;
            }
            if (file != null) {
                file.close();
            }
        } catch (SQLException | IOException e) {
            LOG.warn("the journal was not closed in order", e);
        }
    }
}
