package bywash.tui.view;

import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.husbandry.season.SeasonStatus;
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
        StockUnits units = StockUnits.of(frame);
        return "last " + units.mass(last.massG()) + ", " + Words.shortSpan(last.at(), frame.at()) + " ago; "
                + units.mass(sumG) + " today";
    }

    /** The plan for today; empty where there are no fish on record. */
    public static String plan(Frame frame) {
        SeasonStatus season = frame.snapshot().season();
        if (season == null || season.feed().plan().cohorts().isEmpty()) {
            return "";
        }
        StockUnits units = StockUnits.of(frame);
        String hold = FeedHold.words(frame);
        return (hold.isEmpty() ? "" : hold + " ") + "Plan for today: "
                + units.massNumber(season.feed().plan().lowG()) + " to "
                + units.mass(season.feed().plan().highG()) + " (page f says why).";
    }
}
