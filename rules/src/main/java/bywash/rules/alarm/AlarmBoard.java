package bywash.rules.alarm;

import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.OutOfService;
import bywash.rules.event.OperatorEntry.ReturnToService;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.Unshelve;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** All alarms of a site. One writer; iteration order is by kind, then subject, so that output never depends on hashes. */
public final class AlarmBoard {
    private static final Comparator<Alarm> URGENCY = Comparator.comparing((Alarm a) -> rank(a.state()))
            .thenComparing(a -> a.kind().priority())
            .thenComparing(Alarm::kind)
            .thenComparing(Alarm::subject);

    private final EnumMap<AlarmKind, TreeMap<String, Alarm>> alarms = new EnumMap<>(AlarmKind.class);
    /** The same once more, by kind and subject: they are looked for many times a tick. */
    private final List<Map<String, Alarm>> found = Stream.of(AlarmKind.values())
            .<Map<String, Alarm>>map(kind -> new HashMap<>())
            .toList();

    private final EnumMap<AlarmKind, Set<String>> suppressed = new EnumMap<>(AlarmKind.class);
    private final Incidents incidents = new Incidents(this::standing);
    private List<AlarmTransition> out = new ArrayList<>();

    /** Sets whether a condition holds: non-null where it does. */
    public void set(AlarmKind kind, String subject, Instant at, @Nullable Condition condition) {
        if (condition != null) {
            alarm(kind, subject).holds(at, condition);
            return;
        }
        Alarm alarm = find(kind, subject);
        if (alarm != null) {
            alarm.gone(at);
        }
    }

    /** Nobody watched for a while: no off-delay runs through that time. */
    public void unwatched() {
        alarms.values().forEach(bySubject -> bySubject.values().forEach(Alarm::unknown));
    }

    /** Sets that nobody can say whether a condition holds: an alarm that stands stays. */
    public void unknown(AlarmKind kind, String subject) {
        Alarm alarm = find(kind, subject);
        if (alarm != null) {
            alarm.unknown();
        }
    }

    public void tick(Instant at) {
        alarms.forEach((kind, bySubject) -> {
            Set<String> quiet = suppressed.getOrDefault(kind, Set.of());
            bySubject.forEach((subject, alarm) -> alarm.tick(at, quiet.contains(subject), incidents, out::add));
        });
    }

    /** Sets whether an alarm is quiet by design from the next tick on. Of what the rules say, not of what was kept. */
    public void suppress(AlarmKind kind, String subject, boolean quiet) {
        if (quiet) {
            suppressed.computeIfAbsent(kind, k -> new HashSet<>()).add(subject);
            return;
        }
        Set<String> those = suppressed.get(kind);
        if (those != null) {
            those.remove(subject);
        }
    }

    /** Takes an alarm out of service until it is returned. */
    public void removeFromService(OutOfService entry) {
        AlarmKind.of(entry.alarm())
                .ifPresent(kind ->
                        alarm(kind, entry.subject()).apply(AlarmInput.REMOVE_FROM_SERVICE, entry.at(), out::add));
    }

    public void returnToService(ReturnToService entry) {
        AlarmKind.of(entry.alarm())
                .ifPresent(
                        kind -> alarm(kind, entry.subject()).apply(AlarmInput.RETURN_TO_SERVICE, entry.at(), out::add));
    }

    /** What a restart needs to know of an alarm. */
    public AlarmMemory memory(AlarmKind kind, String subject) {
        return alarm(kind, subject).memory();
    }

    /** Puts alarms back as they were; those not named are normal. Gives no transitions. */
    public void restore(List<AlarmMemory> memories, Instant now) {
        Set<Alarm> named = new HashSet<>();
        for (AlarmMemory memory : memories) {
            Alarm alarm = alarm(memory.kind(), memory.subject());
            named.add(alarm);
            alarm.restore(memory, now);
        }
        all().filter(alarm -> !named.contains(alarm)).forEach(Alarm::forget);
    }

    private Alarm alarm(AlarmKind kind, String subject) {
        Alarm known = find(kind, subject);
        if (known != null) {
            return known;
        }
        Alarm alarm = new Alarm(kind, subject);
        alarms.computeIfAbsent(kind, k -> new TreeMap<>()).put(subject, alarm);
        found.get(kind.ordinal()).put(subject, alarm);
        return alarm;
    }

    private @Nullable Alarm find(AlarmKind kind, String subject) {
        return found.get(kind.ordinal()).get(subject);
    }

    private Stream<Alarm> all() {
        return alarms.values().stream().flatMap(bySubject -> bySubject.values().stream());
    }

    public void acknowledge(Acknowledge entry) {
        for (Alarm alarm : all().toList()) {
            boolean named =
                    entry.alarm() == null || entry.alarm().equals(alarm.kind().word());
            boolean subject = entry.subject() == null || entry.subject().equals(alarm.subject());
            if (named && subject) {
                alarm.apply(AlarmInput.ACKNOWLEDGE, entry.at(), out::add);
            }
        }
    }

    public void shelve(Shelve entry) {
        for (Alarm alarm : all().toList()) {
            if (entry.alarm().equals(alarm.kind().word()) && entry.subject().equals(alarm.subject())) {
                alarm.shelve(entry.at(), entry.duration(), out::add);
            }
        }
    }

    public void unshelve(Unshelve entry) {
        for (Alarm alarm : all().toList()) {
            if (entry.alarm().equals(alarm.kind().word()) && entry.subject().equals(alarm.subject())) {
                alarm.apply(AlarmInput.UNSHELVE, entry.at(), out::add);
            }
        }
    }

    /** Whether an alarm stands (not normal) now. */
    public boolean stands(AlarmKind kind, String subject) {
        Alarm alarm = find(kind, subject);
        return alarm != null && alarm.visible();
    }

    /** Takes the transitions since the last call. */
    public List<AlarmTransition> drain() {
        if (out.isEmpty()) {
            return List.of();
        }
        List<AlarmTransition> taken = out;
        out = new ArrayList<>();
        return taken;
    }

    /** Alarms that are not normal: unacknowledged first, then by priority. */
    public List<AlarmView> views() {
        return all().filter(Alarm::visible).sorted(URGENCY).map(Alarm::view).toList();
    }

    private List<Alarm> standing() {
        return all().filter(Alarm::visible).toList();
    }

    /** Whether the condition of an alarm stands, seen or hidden. */
    public boolean active(AlarmKind kind, String subject) {
        Alarm alarm = find(kind, subject);
        return alarm != null && alarm.active();
    }

    private static int rank(AlarmState state) {
        return switch (state) {
            case UNACKNOWLEDGED -> 0;
            case ACKNOWLEDGED -> 1;
            case RETURNED_UNACKNOWLEDGED -> 2;
            case SHELVED, SUPPRESSED, OUT_OF_SERVICE, NORMAL -> 3;
        };
    }
}
