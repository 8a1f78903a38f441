package bywash.tui.view;

import bywash.rules.site.Band;
import bywash.rules.site.Limit;
import bywash.rules.site.Quantity;
import bywash.rules.site.Vessel;
import bywash.tui.view.HistorySource.Bucket;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The band each vessel's level normally moves in, mm: the site file's where it sets one, else what it did in the last day,
 * the lowest and the highest tenth of half hours left out. Null while less than three hours are known. A day's levels are
 * gone through anew every five minutes of event time, not for every frame. For one screen.
 */
public final class NormalLevels {
    private static final int HALF_HOURS = 48;
    private static final int LEAST = 6;
    private static final Duration HOLDS = Duration.ofMinutes(5);

    private record Known(
            HistorySource trends, Instant at, @Nullable Band band) {
        boolean holds(Frame frame) {
            return trends == frame.trends()
                    && !frame.at().isBefore(at)
                    && frame.at().isBefore(at.plus(HOLDS));
        }
    }

    private final Map<String, Known> known = new HashMap<>();

    @Nullable
    Band of(Vessel vessel, Frame frame) {
        for (Limit limit : frame.snapshot().site().limits()) {
            if (limit.vessel().equals(vessel.id()) && limit.quantity() == Quantity.LEVEL) {
                return limit.band();
            }
        }
        Known last = known.get(vessel.id());
        if (last == null || !last.holds(frame)) {
            last = new Known(frame.trends(), frame.at(), usual(vessel, frame));
            known.put(vessel.id(), last);
        }
        return last.band();
    }

    private static @Nullable Band usual(Vessel vessel, Frame frame) {
        Instant now = frame.at();
        return frame.snapshot()
                .site()
                .probe(vessel.id(), Quantity.LEVEL)
                .map(p -> usual(frame.trends().buckets(p.id(), now.minus(Duration.ofDays(1)), now, HALF_HOURS)))
                .orElse(null);
    }

    private static @Nullable Band usual(List<Bucket> day) {
        List<Bucket> known = day.stream().filter(b -> b.count() > 0).toList();
        if (known.size() < LEAST) {
            return null;
        }
        int tenth = known.size() / 10;
        double low = known.stream().mapToDouble(Bucket::low).sorted().toArray()[tenth];
        double high = known.stream().mapToDouble(Bucket::high).sorted().toArray()[known.size() - 1 - tenth];
        return low < high ? new Band(low, high) : null;
    }
}
