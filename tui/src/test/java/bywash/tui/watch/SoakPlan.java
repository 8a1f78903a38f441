package bywash.tui.watch;

import bywash.samples.simulation.Action;
import bywash.samples.simulation.Action.InflowIntoSump;
import bywash.samples.simulation.Chores;
import bywash.samples.simulation.SiteModel;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.SplittableRandom;

/** What befalls a watch in a month or so, from a seed; and when an alarm has a cause. */
final class SoakPlan {
    private static final List<String> TOPICS = List.of(
            "larkfield/sump/level",
            "larkfield/reserve/level",
            "larkfield/fish",
            "larkfield/do",
            "larkfield/orp",
            "larkfield/pump");

    enum What {
        BROKER_GONE,
        PROBE_GAP,
        KILL,
        STOP,
        FULL_DISK,
        NOTE
    }

    /** @param topic of a gap; else empty */
    record Mishap(What what, Instant from, Instant until, String topic) {}

    final Instant start;
    final int days;
    final List<Action> actions = new ArrayList<>();
    private final List<Mishap> all = new ArrayList<>();
    private final SplittableRandom random;

    SoakPlan(Instant start, int days, long seed) {
        this.start = start;
        this.days = days;
        this.random = new SplittableRandom(seed);
        actions.addAll(Chores.quiet(SiteModel.larkfield(), days));
        for (int day = 6; day < days; day += 7) {
            double minute = day * 1440 + 700;
            actions.add(new InflowIntoSump(minute, minute + 30, 4, 0.9));
        }
        for (int day = 0; day < days; day++) {
            some(What.BROKER_GONE, day, 3, 20, 300);
            some(What.PROBE_GAP, day, 2, 60, 3600);
            some(What.KILL, day, 2, 5, 600);
            some(What.NOTE, day, 4, 0, 0);
            if (day % 3 == 1) {
                some(What.STOP, day, 1, 5, 900);
                some(What.FULL_DISK, day, 1, 600, 7200);
            }
        }
        all.sort(Comparator.comparing(Mishap::from));
    }

    private void some(What what, int day, int times, int fromS, int toS) {
        for (int i = 0; i < times; i++) {
            Instant from = start.plus(Duration.ofDays(day)).plusSeconds(random.nextInt(86_400));
            Instant until = from.plusSeconds(random.nextInt(fromS, toS + 1));
            all.add(new Mishap(what, from, until, what == What.PROBE_GAP ? TOPICS.get(random.nextInt(6)) : ""));
        }
    }

    Deque<Mishap> mishaps() {
        return new ArrayDeque<>(all);
    }

    int times(What what) {
        return (int) all.stream().filter(m -> m.what() == what).count();
    }

    /** Whether something of this kind was so in the time before, which is as long as an alarm of it may take or last. */
    boolean was(What what, Instant at, Duration before) {
        return all.stream().anyMatch(m -> m.what() == what && was(m, at, before));
    }

    /** What befell it in the two hours before. */
    String before(Instant at) {
        return all.stream()
                .filter(m -> m.what() != What.NOTE && was(m, at, Duration.ofHours(2)))
                .map(m -> m.what() + " " + m.topic() + " " + m.from() + " to " + m.until())
                .toList()
                .toString();
    }

    private static boolean was(Mishap m, Instant at, Duration before) {
        return !m.from().isAfter(at) && at.isBefore(m.until().plus(before));
    }

    List<Instant> inflows() {
        return actions.stream()
                .filter(InflowIntoSump.class::isInstance)
                .map(a -> start.plusSeconds(Math.round(((InflowIntoSump) a).atMin() * 60)))
                .toList();
    }

    boolean afterInflow(Instant at, Duration within) {
        return inflows().stream().anyMatch(i -> !at.isBefore(i) && at.isBefore(i.plus(within)));
    }
}
