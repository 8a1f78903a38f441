package bywash.rules.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** One alarm of one subject through its life. Changed only by the board's single writer. */
final class Alarm {
    private final AlarmKind kind;
    private final String subject;
    private final AlarmDelays delays;
    private AlarmState state = AlarmState.NORMAL;
    private boolean active;
    private @Nullable Instant heldSince;
    private @Nullable Instant goneSince;
    private @Nullable Instant raisedAt;
    private @Nullable Instant announcedAt;
    private @Nullable Instant shelvedUntil;
    private @Nullable Condition condition;
    private String incident = "";

    Alarm(AlarmKind kind, String subject) {
        this.kind = kind;
        this.subject = subject;
        this.delays = AlarmDelays.of(kind);
    }

    AlarmKind kind() {
        return kind;
    }

    String subject() {
        return subject;
    }

    AlarmState state() {
        return state;
    }

    String incident() {
        return incident;
    }

    boolean visible() {
        return state != AlarmState.NORMAL;
    }

    /** The condition is true at {@code at}. */
    void holds(Instant at, Condition now) {
        goneSince = null;
        condition = now;
        if (heldSince == null) {
            heldSince = at;
        }
    }

    /** The condition is false at {@code at}. */
    void gone(Instant at) {
        heldSince = null;
        if (goneSince == null) {
            goneSince = at;
        }
    }

    /** Applies delays and shelving ends; called once a tick. */
    void tick(Instant at, Incidents incidents, Consumer<AlarmTransition> out) {
        if (!active && heldSince != null && past(heldSince, delays.on(), at)) {
            active = true;
            raisedAt = at;
            if (!visible() || incident.isEmpty()) {
                incident = incidents.assign(kind, subject, at);
            }
            apply(AlarmInput.RAISE, at, out);
        } else if (active && goneSince != null && past(goneSince, delays.off(), at)) {
            active = false;
            apply(AlarmInput.CLEAR, at, out);
        }
        if (state == AlarmState.SHELVED && shelvedUntil != null && !at.isBefore(shelvedUntil)) {
            apply(AlarmInput.UNSHELVE, at, out);
        }
    }

    void shelve(Instant at, Duration duration, Consumer<AlarmTransition> out) {
        Instant before = shelvedUntil;
        shelvedUntil = at.plus(duration);
        if (!apply(AlarmInput.SHELVE, at, out)) {
            shelvedUntil = before;
        }
    }

    AlarmMemory memory() {
        return new AlarmMemory(
                kind, subject, state, incident, raisedAt, announcedAt, shelvedUntil, known().message(), known().why());
    }

    /**
     * Takes over what was kept. Where the rules, played again, do not see the condition that stood, it counts as gone from
     * now; where they see one that had not stood, it is raised anew after its on-delay.
     */
    void restore(AlarmMemory memory, Instant now) {
        state = memory.state();
        incident = memory.incident();
        raisedAt = memory.raisedAt();
        announcedAt = memory.announcedAt();
        shelvedUntil = memory.hiddenUntil();
        if (condition == null) {
            condition = Condition.of(memory.message(), memory.why(), null);
        }
        switch (state) {
            case UNACKNOWLEDGED, ACKNOWLEDGED -> {
                goneSince = active ? goneSince : now;
                active = true;
            }
            case NORMAL, RETURNED_UNACKNOWLEDGED -> active = false;
            case SHELVED, SUPPRESSED, OUT_OF_SERVICE -> {}
        }
    }

    /** Normal again without a transition, as it never was raised. */
    void forget() {
        state = AlarmState.NORMAL;
        active = false;
        incident = "";
        shelvedUntil = null;
    }

    /** The one transition method. */
    boolean apply(AlarmInput input, Instant at, Consumer<AlarmTransition> out) {
        var next = AlarmLife.next(state, input, active);
        if (next.isEmpty()) {
            return false;
        }
        state = next.get();
        if (state == AlarmState.UNACKNOWLEDGED) {
            announcedAt = at;
        }
        if (state != AlarmState.SHELVED) {
            shelvedUntil = null;
        }
        out.accept(
                new AlarmTransition(at, kind, subject, state, kind.priority(), incident, message(), known().values()));
        if (state == AlarmState.NORMAL) {
            incident = "";
        }
        return true;
    }

    private Condition known() {
        return condition == null ? Condition.of(kind.word(), "", null) : condition;
    }

    private String message() {
        return active ? known().message() : "Back to normal: " + known().message();
    }

    AlarmView view() {
        Guidance guidance = Guidance.of(kind);
        Condition c = known();
        return new AlarmView(
                kind,
                subject,
                state,
                kind.priority(),
                incident,
                Objects.requireNonNullElse(raisedAt, Instant.EPOCH),
                message(),
                c.why(),
                guidance.consequence(),
                guidance.action(),
                active ? c.deadline() : null,
                c.values());
    }

    private static boolean past(Instant since, Duration delay, Instant at) {
        return !at.isBefore(since.plus(delay));
    }
}
