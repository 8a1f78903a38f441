package bywash.ingest.journal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What is still to be written, in the order in which it must stand on the record, within a bound. While a disk is full it
 * grows up to there; then messages are given up that follow another of their topic within seconds, later within minutes, so
 * that what is left tells of the whole time. Only when no message is left, minutes go, then states, alarm lines (but the
 * last of each alarm), and entries last of all. What was given up is counted. For one thread.
 */
public final class Backlog {
    private static final Duration LEAST_APART = Duration.ofSeconds(2);
    private static final Duration MOST_APART = Duration.ofDays(8);

    private final long mostBytes;
    private ArrayDeque<Writing> waiting = new ArrayDeque<>();
    private final Map<Writing.Kind, Integer> lines = new EnumMap<>(Writing.Kind.class);
    private final Map<Writing.Kind, Long> lost = new EnumMap<>(Writing.Kind.class);
    private long bytes;

    /** @param mostBytes bound on what waits, as {@link Writing#size} counts it */
    public Backlog(long mostBytes) {
        if (mostBytes < 1) {
            throw new IllegalArgumentException("mostBytes must be at least 1, not " + mostBytes);
        }
        this.mostBytes = mostBytes;
    }

    /** Takes it, be there room or not: see {@link #full}. */
    public void add(Writing writing) {
        if (writing instanceof Writing.Figures figures && waiting(Writing.Kind.REST) > 0) {
            outdated(w -> w instanceof Writing.Figures f && f.incident().equals(figures.incident()));
        } else if (writing instanceof Writing.Chlorine && waiting(Writing.Kind.REST) > 0) {
            outdated(w -> w instanceof Writing.Chlorine);
        }
        waiting.addLast(writing);
        count(writing, 1);
    }

    /** Figures of an incident are whole each time, and so is what is known of chlorine: older ones need not be written. */
    private void outdated(Predicate<Writing> which) {
        waiting.removeIf(w -> {
            boolean old = which.test(w);
            if (old) {
                count(w, -1);
            }
            return old;
        });
    }

    private void count(Writing writing, int times) {
        bytes += (long) times * writing.size();
        lines.merge(writing.kind(), times * writing.lines(), Integer::sum);
    }

    public boolean isEmpty() {
        return waiting.isEmpty();
    }

    /** Over the bound: write now, or else {@link #shrink}. */
    public boolean full() {
        return bytes > mostBytes;
    }

    /** The first so many of what waits. */
    public List<Writing> first(int most) {
        List<Writing> first = new ArrayList<>(Math.min(most, waiting.size()));
        Iterator<Writing> all = waiting.iterator();
        while (first.size() < most && all.hasNext()) {
            first.add(all.next());
        }
        return first;
    }

    /** The first so many are on the record. */
    public void written(int count) {
        for (int i = 0; i < count; i++) {
            count(waiting.removeFirst(), -1);
        }
    }

    /** Lines of a kind that wait. */
    public int waiting(Writing.Kind kind) {
        return lines.getOrDefault(kind, 0);
    }

    /** Lines of a kind that were given up. */
    public long lost(Writing.Kind kind) {
        return lost.getOrDefault(kind, 0L);
    }

    /** Lines that were given up. */
    public long lost() {
        return lost.values().stream().mapToLong(Long::longValue).sum();
    }

    /** The disk does not take it, and there is too much of it: gives up what matters least, to well below the bound. */
    public void shrink() {
        outdated(w -> w instanceof Writing.Chlorine); // an older one is on the disk, and the next hour brings another
        thin(Writing.Message.class);
        thin(Writing.Minute.class);
        halve(Writing.Kind.STATE);
        for (List<Writing> old = outdated(); over() && !old.isEmpty(); old = outdated()) {
            giveUp(olderHalf(old));
        }
        halve(Writing.Kind.ALARM);
        halve(Writing.Kind.ENTRY);
    }

    private boolean over() {
        return bytes > mostBytes - mostBytes / 4;
    }

    private void halve(Writing.Kind kind) {
        while (over() && waiting(kind) > 0) {
            giveUp(olderHalf(of(kind)));
        }
    }

    /** What follows another of its source too soon goes; sooner than 2 s at first, than twice that if that is not enough. */
    private void thin(Class<? extends Writing.Sample> type) {
        for (Duration apart = LEAST_APART; over(); apart = apart.plus(apart)) {
            List<? extends Writing.Sample> all =
                    waiting.stream().filter(type::isInstance).map(type::cast).toList();
            if (all.isEmpty()) {
                return;
            }
            giveUp(apart.compareTo(MOST_APART) > 0 ? these(all) : tooSoon(all, apart));
        }
    }

    private static Set<Writing> tooSoon(List<? extends Writing.Sample> all, Duration apart) {
        Set<Writing> chosen = same();
        Map<String, Instant> last = new HashMap<>();
        for (Writing.Sample each : all) {
            Instant before = last.get(each.source());
            if (before != null && each.at().isBefore(before.plus(apart))) {
                chosen.add(each);
            } else {
                last.put(each.source(), each.at());
            }
        }
        return chosen;
    }

    private void giveUp(Set<Writing> these) {
        ArrayDeque<Writing> left = new ArrayDeque<>(waiting.size());
        for (Writing writing : waiting) {
            if (these.contains(writing)) {
                count(writing, -1);
                lost.merge(writing.kind(), (long) writing.lines(), Long::sum);
            } else {
                left.addLast(writing);
            }
        }
        waiting = left;
    }

    private static Set<Writing> these(List<? extends Writing> all) {
        Set<Writing> set = same();
        set.addAll(all);
        return set;
    }

    /** Told apart by which they are, not by what they say: two may be equal. */
    private static Set<Writing> same() {
        return Collections.newSetFromMap(new IdentityHashMap<>());
    }

    private List<Writing> of(Writing.Kind kind) {
        return waiting.stream().filter(w -> w.kind() == kind).toList();
    }

    private static Set<Writing> olderHalf(List<Writing> all) {
        return these(all.subList(0, (all.size() + 1) / 2));
    }

    /** Changes of alarms that have each changed again since. */
    private List<Writing> outdated() {
        Set<List<String>> later = new HashSet<>();
        Deque<Writing> old = new ArrayDeque<>();
        for (Iterator<Writing> newestFirst = waiting.descendingIterator(); newestFirst.hasNext(); ) {
            Writing writing = newestFirst.next();
            if (writing instanceof Writing.Transitions t) {
                boolean news = false;
                for (KeptTransition each : t.all()) {
                    news |= later.add(List.of(each.kind(), each.subject()));
                }
                if (!news) {
                    old.addFirst(writing);
                }
            }
        }
        return List.copyOf(old);
    }
}
