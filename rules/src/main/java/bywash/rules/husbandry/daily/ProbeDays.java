package bywash.rules.husbandry.daily;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The days of one probe. */
final class ProbeDays {
    static final int MOST_DAYS = 800;

    private static final class Sum {
        private final LocalDate day;
        private final Instant start;
        private final Instant end;
        private long count;
        private double sum;
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;

        Sum(LocalDate day, ZoneId zone) {
            this.day = day;
            this.start = day.atStartOfDay(zone).toInstant();
            this.end = day.plusDays(1).atStartOfDay(zone).toInstant();
        }

        boolean holds(Instant at) {
            return !at.isBefore(start) && at.isBefore(end);
        }

        void add(double value) {
            count++;
            sum += value;
            low = Math.min(low, value);
            high = Math.max(high, value);
        }

        void add(DayValue more) {
            count += more.count();
            sum += more.count() * more.mean();
            low = Math.min(low, more.low());
            high = Math.max(high, more.high());
        }

        DayValue value() {
            return new DayValue(day, count, low, sum / count, high);
        }
    }

    private final ZoneId zone;
    private final TreeMap<LocalDate, Sum> days = new TreeMap<>();
    private @Nullable Sum current;

    ProbeDays(ZoneId zone) {
        this.zone = zone;
    }

    void add(Instant at, double value) {
        Sum sum = current;
        if (sum == null || !sum.holds(at)) {
            sum = of(at.atZone(zone).toLocalDate());
            current = sum;
        }
        sum.add(value);
    }

    /** Readings of a day, or of a part of it, that are on record as a whole. */
    void add(DayValue day) {
        of(day.day()).add(day);
    }

    private Sum of(LocalDate day) {
        Sum sum = days.computeIfAbsent(day, d -> new Sum(d, zone));
        if (days.size() > MOST_DAYS) {
            days.pollFirstEntry();
        }
        return sum;
    }

    @Nullable
    DayValue on(LocalDate day) {
        Sum sum = days.get(day);
        return sum == null ? null : sum.value();
    }

    List<DayValue> all() {
        List<DayValue> values = new ArrayList<>();
        days.values().forEach(sum -> values.add(sum.value()));
        return values;
    }
}
