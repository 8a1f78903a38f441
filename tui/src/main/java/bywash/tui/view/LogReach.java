package bywash.tui.view;

import bywash.tui.view.EventLog.Event;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The log as far back as a page has asked for it. What is older than memory is read in growing pieces, once, and kept while
 * the page shows the same end.
 */
public final class LogReach {
    private static final Duration FIRST = Duration.ofDays(7);
    private static final Duration LAST = Duration.ofDays(400);

    private final List<Event> older = new ArrayList<>();
    private Instant start = Instant.MIN;
    private Instant reached = Instant.MIN;
    private Duration piece = FIRST;
    private @Nullable EventLog source;

    /**
     * Lines that pass, newest first, and whether these are all there are.
     *
     * @param lines at least as many as asked for, where there are
     */
    public record Part(List<LogLine> lines, boolean whole) {}

    /**
     * The lines before an instant.
     *
     * @param until exclusive; null for now
     * @param enough how many are wanted
     */
    public Part lines(Frame frame, LogFilter filter, @Nullable Instant until, int enough) {
        EventLog log = frame.log();
        Instant whole = log.wholeFrom();
        Instant from = until != null && until.isBefore(whole) ? until : whole;
        if (!from.equals(start) || !Objects.equals(log, source)) {
            older.clear();
            start = from;
            reached = from;
            piece = FIRST;
            source = log;
        }
        List<LogLine> lines = new ArrayList<>();
        if (until == null || until.isAfter(whole)) {
            add(lines, log.between(whole, until == null ? Instant.MAX : until), frame, filter, enough);
        }
        add(lines, older, frame, filter, enough);
        while (lines.size() < enough && reached.isAfter(Instant.MIN)) {
            Instant next = piece.compareTo(LAST) > 0 ? Instant.MIN : before(reached, piece);
            List<Event> more = log.between(next, reached);
            older.addAll(more);
            reached = next;
            piece = piece.multipliedBy(2);
            add(lines, more, frame, filter, enough);
        }
        return new Part(lines, reached.equals(Instant.MIN) && lines.size() < enough);
    }

    /** What stands under the oldest line. */
    public String beginning(Frame frame) {
        return frame.log().beginning();
    }

    private static Instant before(Instant at, Duration piece) {
        return at.isBefore(Instant.EPOCH) ? Instant.MIN : at.minus(piece);
    }

    private static void add(List<LogLine> lines, List<Event> events, Frame frame, LogFilter filter, int enough) {
        for (Event event : events) {
            if (lines.size() >= enough) {
                return;
            }
            LogLine line = LogLine.from(event, frame);
            if (filter.passes(line)) {
                lines.add(line);
            }
        }
    }
}
