package bywash.rules.husbandry.season;

import bywash.rules.husbandry.feed.FeedBook;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.feed.FeedPlan;
import bywash.rules.husbandry.feed.FeedWarning;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Feed as it stands.
 *
 * @param days what was fed, oldest first
 * @param recent load of the last seven days, a day; null where nothing was fed
 * @param plan for today
 * @param planned load of the middle of the plan
 * @param protein share taken (0 to 1)
 * @param warnings what the plan would bring about
 */
public record FeedStatus(
        List<FeedBook.Day> days,
        double totalG,
        @Nullable FeedLoad recent,
        FeedPlan plan,
        FeedLoad planned,
        double protein,
        List<FeedWarning> warnings) {
    public FeedStatus {
        days = List.copyOf(days);
        warnings = List.copyOf(warnings);
    }
}
