package bywash.tui.view;

import bywash.rules.event.OperatorEntry.Feed;
import bywash.tui.view.EventLog.Event;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/** What was fed, from the record. */
public final class FeedRecord {
    private FeedRecord() {}

    /** Such as {@code last 180 g, 3 h ago; 360 g today}. */
    public static String last(Frame frame) {
        List<Feed> feeds = frame.log().newestFirst().stream()
                .filter(e -> e instanceof Event.Entry entry && entry.entry() instanceof Feed)
                .map(e -> (Feed) ((Event.Entry) e).entry())
                .toList();
        if (feeds.isEmpty()) {
            return "none on record";
        }
        ZoneId zone = frame.snapshot().site().timeZone();
        LocalDate today = frame.at().atZone(zone).toLocalDate();
        double sumG = feeds.stream()
                .filter(f -> f.at().atZone(zone).toLocalDate().equals(today))
                .mapToDouble(Feed::massG)
                .sum();
        Feed last = feeds.get(0);
        return "last " + Words.number(last.massG(), 0) + " g, " + Words.shortSpan(last.at(), frame.at()) + " ago; "
                + Words.number(sumG, 0) + " g today";
    }
}
