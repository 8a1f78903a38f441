package bywash.rules.husbandry.daily;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The minutes of the last two days of each probe, so that a test entered a little late is held against its own time. */
public final class RecentMinutes implements PastMinutes {
    /** How far back it reaches. Less than what a restart plays again, so that it is whole after one. */
    public static final Duration REACH = Duration.ofDays(2);

    private static final long SECONDS = 60;

    /** The minutes of one probe, each at its place in a ring that holds the newest and all within reach of it. */
    private static final class Line {
        private static final int PLACES = (int) REACH.toMinutes() + 1;

        private final long[] counts = new long[PLACES];
        private final double[] sums = new double[PLACES];
        private long newest = Long.MIN_VALUE;
        private int place;

        void add(long minute, long more, double moreSum) {
            if (minute > newest) {
                advanceTo(minute);
            }
            counts[place] += more;
            sums[place] += moreSum;
        }

        /** What lies a whole ring back is forgotten, and minutes in between have no reading. */
        private void advanceTo(long minute) {
            long from = newest == Long.MIN_VALUE ? minute : Math.max(newest + 1, minute - PLACES + 1);
            for (long m = from; m <= minute; m++) {
                place = Math.floorMod(m, PLACES);
                counts[place] = 0;
                sums[place] = 0;
            }
            newest = minute;
        }

        /** The last minute before {@code end} that has a reading; the least value where none within reach has. */
        long lastBefore(long end) {
            for (long m = Math.min(end - 1, newest); m >= oldest(); m--) {
                if (counts[Math.floorMod(m, PLACES)] > 0) {
                    return m;
                }
            }
            return Long.MIN_VALUE;
        }

        private long oldest() {
            return newest == Long.MIN_VALUE ? Long.MAX_VALUE : newest - PLACES + 1;
        }

        /** Mean of the readings of minutes from {@code first} to before {@code end}; NaN where there is none. */
        double mean(long first, long end) {
            long count = 0;
            double sum = 0;
            for (long m = Math.max(first, oldest()); m < end && m <= newest; m++) {
                int at = Math.floorMod(m, PLACES);
                count += counts[at];
                sum += sums[at];
            }
            return count == 0 ? Double.NaN : sum / count;
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
        long minute = line.lastBefore(minute(at));
        return minute == Long.MIN_VALUE ? Optional.empty() : found(minute, line.mean(minute, minute + 1), at, within);
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
        return line.mean(first, minute(to));
    }
}
