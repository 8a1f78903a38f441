package bywash.rules.husbandry.feed;

import bywash.rules.event.Appetite;
import bywash.rules.event.OperatorEntry.Feed;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What was fed, by local day. */
public final class FeedBook {
    private static final int MOST_DAYS = 800;
    private static final Duration APPETITE_HOLDS = Duration.ofDays(3);

    /**
     * One day's feed.
     *
     * @param proteinG crude protein in it, g; where the entry gave none, with the usual share
     */
    public record Day(LocalDate day, double feedG, double proteinG) {
        Day plus(double moreG, double moreProteinG) {
            return new Day(day, feedG + moreG, proteinG + moreProteinG);
        }
    }

    private final ZoneId zone;
    private final TreeMap<LocalDate, Day> days = new TreeMap<>();
    private @Nullable Appetite appetite;
    private Instant appetiteAt = Instant.MIN;
    private double lastProtein = Double.NaN;
    private double totalG;

    public FeedBook(ZoneId zone) {
        this.zone = zone;
    }

    /** @param usualProtein share of protein (0 to 1) where neither this entry nor one before gave it */
    public void book(Feed feed, double usualProtein) {
        if (!Double.isNaN(feed.proteinFraction())) {
            lastProtein = feed.proteinFraction();
        }
        double protein = Double.isNaN(lastProtein) ? usualProtein : lastProtein;
        LocalDate day = feed.at().atZone(zone).toLocalDate();
        days.merge(
                day,
                new Day(day, feed.massG(), feed.massG() * protein),
                (old, more) -> old.plus(more.feedG(), more.proteinG()));
        if (days.size() > MOST_DAYS) {
            days.pollFirstEntry();
        }
        totalG += feed.massG();
        if (feed.appetite() != null) {
            appetite = feed.appetite();
            appetiteAt = feed.at();
        }
    }

    /** Days with feed, oldest first. */
    public List<Day> days() {
        return new ArrayList<>(days.values());
    }

    /** All feed on record, g, 0 or more. */
    public double totalG() {
        return totalG;
    }

    /** Share of protein last given (0 to 1); NaN before. */
    public double lastProtein() {
        return lastProtein;
    }

    /** How the fish last ate; null where that was not said in the last three days. */
    public @Nullable Appetite appetite(Instant now) {
        return appetite != null && !now.isAfter(appetiteAt.plus(APPETITE_HOLDS)) ? appetite : null;
    }

    /** Mean of the last whole days before today; days without an entry count as none. Null before the first feed. */
    public @Nullable Day recent(Instant now, int count) {
        LocalDate today = now.atZone(zone).toLocalDate();
        if (days.isEmpty()) {
            return null;
        }
        long known = Math.max(1, Math.min(count, java.time.temporal.ChronoUnit.DAYS.between(days.firstKey(), today)));
        double feed = 0;
        double protein = 0;
        for (Day day : days.subMap(today.minusDays(known), true, today, false).values()) {
            feed += day.feedG();
            protein += day.proteinG();
        }
        return new Day(today, feed / known, protein / known);
    }
}
