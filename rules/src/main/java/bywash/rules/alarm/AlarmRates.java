package bywash.rules.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * How many alarms one grower is called by, after EEMUA Publication 191 (figures from a secondary sheet): in the long run no
 * more than one in ten minutes; more than ten in ten minutes is a flood, which ends below five in ten minutes (the end from
 * memory). An alarm raised three times within a minute chatters (ANSI/ISA-18.2, from memory). Only raisings count, no
 * repeated calls. Fed in order of time.
 */
public final class AlarmRates {
    private static final Duration TEN_MINUTES = Duration.ofMinutes(10);
    private static final Duration MINUTE = Duration.ofMinutes(1);
    private static final Duration HOUR = Duration.ofHours(1);
    private static final int FLOOD = 10;
    private static final int FLOOD_OVER = 5;

    /** A time of flood. @param to null while it lasts; @param raised alarms in it */
    public record Flood(Instant from, @Nullable Instant to, int raised) {}

    /** One alarm and how often it was raised. */
    public record Count(String alarm, int raised) {}

    private final Deque<Instant> recent = new ArrayDeque<>();
    private final Map<String, Deque<Instant>> each = new TreeMap<>();
    private final Map<String, Integer> counts = new TreeMap<>();
    private final Map<String, Integer> chattering = new TreeMap<>();
    private final List<Flood> floods = new ArrayList<>();
    private @Nullable Instant floodFrom;
    private int floodRaised;
    private int raised;
    private int peak;
    private final Peak inHour = new Peak(HOUR);
    private final Peak inMinute = new Peak(MINUTE);

    /** Most raised within any span of one length. */
    private static final class Peak {
        private final Duration within;
        private final Deque<Instant> times = new ArrayDeque<>();
        private int most;

        Peak(Duration within) {
            this.within = within;
        }

        void raised(Instant at) {
            times.addLast(at);
            while (!times.getFirst().isAfter(at.minus(within))) {
                times.removeFirst();
            }
            most = StrictMath.max(most, times.size());
        }
    }

    /** Takes a transition; all but raisings are passed over. */
    public void add(AlarmTransition t) {
        advance(t.at());
        if (t.state() != AlarmState.UNACKNOWLEDGED || t.again()) {
            return;
        }
        raised++;
        inHour.raised(t.at());
        inMinute.raised(t.at());
        recent.addLast(t.at());
        peak = StrictMath.max(peak, recent.size());
        String name = t.kind().word() + " " + t.subject();
        counts.merge(name, 1, Integer::sum);
        chatter(name, t.at());
        if (floodFrom != null) {
            floodRaised++;
        } else if (recent.size() > FLOOD) {
            floodFrom = recent.getFirst();
            floodRaised = recent.size();
        }
    }

    private void chatter(String name, Instant at) {
        Deque<Instant> times = each.computeIfAbsent(name, n -> new ArrayDeque<>());
        times.addLast(at);
        while (times.getFirst().isBefore(at.minus(MINUTE))) {
            times.removeFirst();
        }
        if (times.size() == Chatter.RAISINGS) {
            chattering.merge(name, 1, Integer::sum);
            times.clear();
        }
    }

    /** Time has come so far. */
    public void advance(Instant now) {
        while (!recent.isEmpty() && !recent.getFirst().isAfter(now.minus(TEN_MINUTES))) {
            Instant leaves = recent.removeFirst().plus(TEN_MINUTES);
            if (floodFrom != null && recent.size() < FLOOD_OVER) {
                floods.add(new Flood(floodFrom, leaves, floodRaised));
                floodFrom = null;
            }
        }
    }

    /** Alarms raised so far. */
    public int raised() {
        return raised;
    }

    /** Most raised in any ten minutes. */
    public int peakTenMinutes() {
        return peak;
    }

    /** Most raised in any hour. */
    public int peakHour() {
        return inHour.most;
    }

    /** Most raised in any minute. */
    public int peakMinute() {
        return inMinute.most;
    }

    /** Mean in ten minutes over a span; NaN where it has no length. */
    public double meanTenMinutes(Duration span) {
        return span.isZero() || span.isNegative()
                ? Double.NaN
                : raised * (double) TEN_MINUTES.toSeconds() / span.toSeconds();
    }

    /** Floods, the one that lasts included. */
    public List<Flood> floods() {
        List<Flood> all = new ArrayList<>(floods);
        if (floodFrom != null) {
            all.add(new Flood(floodFrom, null, floodRaised));
        }
        return all;
    }

    /** The alarms raised most often, most first; of as many, by name. */
    public List<Count> mostFrequent(int most) {
        return counts.entrySet().stream()
                .map(e -> new Count(e.getKey(), e.getValue()))
                .sorted(Comparator.comparingInt(Count::raised).reversed().thenComparing(Count::alarm))
                .limit(most)
                .toList();
    }

    /** How often each alarm that chattered did so, by name. */
    public List<Count> chattering() {
        return chattering.entrySet().stream()
                .map(e -> new Count(e.getKey(), e.getValue()))
                .toList();
    }
}
