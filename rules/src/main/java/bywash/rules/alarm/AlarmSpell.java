package bywash.rules.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One time that an alarm stood.
 *
 * @param raised the transition that raised it
 * @param last the latest that told of it while it stood
 * @param calls how often it called
 * @param acknowledged when somebody first answered; null where nobody has
 * @param over when it ended; null while it stands
 * @param end the state it ended in: normal, returned-unacknowledged, or hidden from the grower; null while it stands
 */
public record AlarmSpell(
        AlarmTransition raised,
        AlarmTransition last,
        int calls,
        @Nullable Instant acknowledged,
        @Nullable Instant over,
        @Nullable AlarmState end) {

    public AlarmKind kind() {
        return raised.kind();
    }

    public String subject() {
        return raised.subject();
    }

    public String incident() {
        return raised.incident();
    }

    /** Whether it stood at some time of a span. */
    public boolean within(Instant from, Instant to) {
        return raised.at().isBefore(to) && (over == null || !over.isBefore(from));
    }

    /** How long it stood, to its end or so far. */
    public Duration stood(Instant now) {
        return Duration.between(raised.at(), over == null ? now : over);
    }

    private AlarmSpell calledAgain(AlarmTransition t) {
        return new AlarmSpell(raised, t, calls + 1, acknowledged, over, end);
    }

    private AlarmSpell acknowledgedAt(AlarmTransition t) {
        return new AlarmSpell(
                raised, over == null ? t : last, calls, acknowledged == null ? t.at() : acknowledged, over, end);
    }

    private AlarmSpell overAt(AlarmTransition t) {
        return new AlarmSpell(raised, t, calls, acknowledged, t.at(), t.state());
    }

    /** The spells of alarm lines in order of time, by when they were raised. */
    public static List<AlarmSpell> of(List<AlarmTransition> transitions) {
        Map<String, Integer> latest = new TreeMap<>();
        List<AlarmSpell> all = new ArrayList<>();
        for (AlarmTransition t : transitions) {
            String key = t.kind().word() + " " + t.subject();
            Integer at = latest.get(key);
            AlarmSpell spell = at == null ? null : all.get(at);
            boolean stands = spell != null && spell.over() == null;
            if (t.state() == AlarmState.UNACKNOWLEDGED && !stands) {
                latest.put(key, all.size());
                all.add(new AlarmSpell(t, t, 1, null, null, null));
            } else if (at != null && spell != null) {
                all.set(at, spell.then(t, stands));
            }
        }
        return all;
    }

    private AlarmSpell then(AlarmTransition t, boolean stands) {
        return switch (t.state()) {
            case UNACKNOWLEDGED -> calledAgain(t);
            case ACKNOWLEDGED -> acknowledgedAt(t);
            case NORMAL -> stands ? overAt(t) : acknowledgedAt(t);
            case RETURNED_UNACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> stands ? overAt(t) : this;
        };
    }
}
