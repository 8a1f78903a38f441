package bywash.tui.watch;

import bywash.ingest.journal.Backlog;
import bywash.ingest.journal.JournalState;
import bywash.ingest.journal.Writing;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * What the head line says of the journal: while it cannot keep, why, and how much waits in memory; for a while after, that
 * it works again and what was lost meanwhile; else nothing, or what was done about a damaged file. For the watch's own loop.
 */
final class JournalWords {
    private static final Duration TELL = Duration.ofHours(1);

    private boolean faulty;
    private long lostBefore;
    private Instant mendedAt = Instant.MIN;
    private String mended = "";

    String of(JournalState state, Backlog backlog, Instant now) {
        if (!state.durable() || (faulty && !backlog.isEmpty())) {
            if (!faulty) {
                faulty = true;
                lostBefore = backlog.lost();
            }
            return "NOT ON DISK" + (state.durable() ? "" : ": " + state.brief()) + waiting(backlog)
                    + lost(backlog, "; ", " given up");
        }
        if (faulty) {
            faulty = false;
            mendedAt = now;
            mended = "journal works again, " + (backlog.lost() == lostBefore ? "all is on disk" : "");
            mended += lost(backlog, "", " of that time lost");
        }
        if (!state.brief().isEmpty()) {
            return state.brief();
        }
        return now.isBefore(mendedAt.plus(TELL)) ? mended : "";
    }

    private static String waiting(Backlog backlog) {
        String words = waiting(backlog, List.of(Writing.Kind.ENTRY, Writing.Kind.ALARM, Writing.Kind.MESSAGE));
        return words.isEmpty() ? "" : " (" + words + " wait)";
    }

    /** What is lost where nothing will be written any more; empty where nothing of the record is. */
    static String unwritten(Backlog backlog) {
        return waiting(
                backlog,
                List.of(
                        Writing.Kind.ENTRY,
                        Writing.Kind.ALARM,
                        Writing.Kind.STATE,
                        Writing.Kind.MESSAGE,
                        Writing.Kind.MINUTE));
    }

    private static String waiting(Backlog backlog, List<Writing.Kind> kinds) {
        List<String> words = new ArrayList<>();
        for (Writing.Kind kind : kinds) {
            int lines = backlog.waiting(kind);
            if (lines > 0) {
                words.add(count(lines, kind));
            }
        }
        return String.join(", ", words);
    }

    private String lost(Backlog backlog, String before, String after) {
        List<String> words = new ArrayList<>();
        for (Writing.Kind kind : List.of(Writing.Kind.ENTRY, Writing.Kind.ALARM, Writing.Kind.MESSAGE)) {
            if (backlog.lost(kind) > 0) {
                words.add(count(backlog.lost(kind), kind));
            }
        }
        return backlog.lost() == lostBefore || words.isEmpty() ? "" : before + String.join(", ", words) + after;
    }

    private static String count(long lines, Writing.Kind kind) {
        boolean one = lines == 1;
        return lines
                + switch (kind) {
                    case ENTRY -> one ? " entry" : " entries";
                    case ALARM -> one ? " alarm line" : " alarm lines";
                    case MESSAGE -> one ? " message" : " messages";
                    case MINUTE -> one ? " minute" : " minutes";
                    case STATE -> one ? " state" : " states";
                    case REST -> " more";
                };
    }
}
