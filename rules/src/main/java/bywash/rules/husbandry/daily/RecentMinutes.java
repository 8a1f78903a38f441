package bywash.rules.husbandry.daily;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;

/** The minutes of the last two days of each probe, so that a test entered a little late is held against its own time. */
public final class RecentMinutes implements PastMinutes {
    /** How far back it reaches. Less than what a restart plays again, so that it is whole after one. */
    public static final Duration REACH = Duration.ofDays(2);

    private static final long SECONDS = 60;

    private record Kept(long minute, long count, double sum) {}

    private static final class Line {
        private final ArrayDeque<Kept> kept = new ArrayDeque<>();
        private long minute = Long.MIN_VALUE;
        private long count;
        private double sum;

        void add(long newMinute, long more, double moreSum) {
            if (newMinute > minute) {
                close();
                minute = newMinute;
                long oldest = newMinute - REACH.toMinutes();
                while (!kept.isEmpty() && kept.getFirst().minute() < oldest) {
                    kept.removeFirst();
                }
            }
            count += more;
            sum += moreSum;
        }

        private void close() {
            if (count > 0) {
                kept.addLast(new Kept(minute, count, sum));
            }
            count = 0;
            sum = 0;
        }
    }

    private final Map<String, Line> lines = new HashMap<>();

    private static long minute(Instant at) {
        return Math.floorDiv(at.getEpochSecond(), SECONDS);
    }

    /** A reading; one of an earlier minute than the present is counted to the present one, as the journal does. */
    public void reading(String probe, Instant at, double value) {
        line(probe).add(minute(at), 1, value);
    }

    /** A whole minute that is on record; give them oldest first. */
    public void minute(String probe, Instant start, long count, double mean) {
        line(probe).add(minute(start), count, count * mean);
    }

    private Line line(String probe) {
        Line line = lines.get(probe);
        if (line == null) {
            line = new Line();
            lines.put(probe, line);
        }
        return line;
    }

    @Override
    public Optional<Minute> before(String probe, Instant at, Duration within) {
        Line line = lines.get(probe);
        if (line == null) {
            return Optional.empty();
        }
        long end = minute(at);
        if (line.count > 0 && line.minute < end) {
            return found(line.minute, line.sum / line.count, at, within);
        }
        Iterator<Kept> newest = line.kept.descendingIterator();
        while (newest.hasNext()) {
            Kept k = newest.next();
            if (k.minute() < end) {
                return found(k.minute(), k.sum() / k.count(), at, within);
            }
        }
        return Optional.empty();
    }

    private static Optional<Minute> found(long minute, double mean, Instant at, Duration within) {
        Instant start = Instant.ofEpochSecond(minute * SECONDS);
        return start.isBefore(at.minus(within)) ? Optional.empty() : Optional.of(new Minute(start, mean));
    }

    @Override
    public double mean(String probe, Instant from, Instant to) {
        Line line = lines.get(probe);
        if (line == null) {
            return Double.NaN;
        }
        long first = -Math.floorDiv(-from.getEpochSecond(), SECONDS);
        long end = minute(to);
        long count = 0;
        double sum = 0;
        for (Kept k : line.kept) {
            if (k.minute() >= first && k.minute() < end) {
                count += k.count();
                sum += k.sum();
            }
        }
        if (line.minute >= first && line.minute < end) {
            count += line.count;
            sum += line.sum;
        }
        return count == 0 ? Double.NaN : sum / count;
    }
}
