package bywash.rules.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** One alarm of one subject through its life. Changed only by the board's single writer. */
final class Alarm {
    private final AlarmKind kind;
    private final String subject;
    private final AlarmDelays delays;
    private final AlarmDesign design;
    private final Chatter chatter = new Chatter();
    private AlarmState state = AlarmState.NORMAL;
    private boolean active;
    private @Nullable Instant heldSince;
    private @Nullable Instant goneSince;
    private @Nullable Instant raisedAt;
    private @Nullable Instant announcedAt;
    private @Nullable Instant shelvedUntil;
    private @Nullable Condition condition;
    private String incident = "";
    private int announcements;

    Alarm(AlarmKind kind, String subject) {
        this.kind = kind;
        this.subject = subject;
        this.delays = AlarmDelays.of(kind);
        this.design = AlarmDesign.of(kind);
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

    Instant raisedAt() {
        return Objects.requireNonNullElse(raisedAt, Instant.EPOCH);
    }

    boolean visible() {
        return state != AlarmState.NORMAL;
    }

    /** Whether its condition stands, seen or hidden. */
    boolean active() {
        return active;
    }

    /** The condition is true at {@code at}. */
    void holds(Instant at, Condition now) {
        goneSince = null;
        condition = now;
        if (heldSince == null) {
            heldSince = at;
        }
    }

    /** Nobody can say whether the condition is true: what stands stays, and its off-delay begins anew when it is known. */
    void unknown() {
        goneSince = null;
    }

    /** The condition is false at {@code at}. */
    void gone(Instant at) {
        heldSince = null;
        if (goneSince == null) {
            goneSince = at;
        }
    }

    /**
     * Applies delays, suppression by design, the end of shelving, and repeated announcement; called once a tick.
     *
     * @param suppressed whether it is to be quiet by design now
     */
    void tick(Instant at, boolean suppressed, Incidents incidents, Consumer<AlarmTransition> out) {
        if (!suppressed && state == AlarmState.SUPPRESSED) {
            apply(AlarmInput.RELEASE, at, out);
        }
        if (!active && heldSince != null && past(heldSince, delays.on(), at)) {
            raise(at, suppressed, incidents, out);
        } else if (active && goneSince != null && past(goneSince, chatter.off(delays.off(), at), at)) {
            active = false;
            apply(AlarmInput.CLEAR, at, out);
        } else if (suppressed && visible()) {
            apply(AlarmInput.SUPPRESS, at, out);
        }
        if (state == AlarmState.SHELVED && shelvedUntil != null && !at.isBefore(shelvedUntil)) {
            apply(AlarmInput.UNSHELVE, at, out);
        }
        Duration again = design.announceAgain();
        if (again != null && announcedAt != null && past(announcedAt, again, at)) {
            apply(AlarmInput.ANNOUNCE_AGAIN, at, out);
        }
    }

    private void raise(Instant at, boolean suppressed, Incidents incidents, Consumer<AlarmTransition> out) {
        active = true;
        raisedAt = at;
        if (!visible() || incident.isEmpty()) {
            incident = incidents.assign(kind, subject, at);
        }
        chatter.raised(at);
        apply(suppressed ? AlarmInput.SUPPRESS : AlarmInput.RAISE, at, out);
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
                kind,
                subject,
                state,
                incident,
                raisedAt,
                announcedAt,
                announcements,
                shelvedUntil,
                known().message(),
                known().why());
    }

    /**
     * Takes over what was kept. Where the rules, played again, do not see the condition that stood, it counts as gone from
     * now; where they see one that had not stood, it is raised anew after its on-delay. What went on while it was hidden
     * changed nothing that was kept: there the rules know better.
     */
    void restore(AlarmMemory memory, Instant now) {
        state = memory.state();
        if (!state.setAside() || !memory.incident().isEmpty()) {
            incident = memory.incident();
        }
        if (!state.setAside() || raisedAt == null) {
            raisedAt = memory.raisedAt();
        }
        announcedAt = memory.announcedAt();
        announcements = memory.announcements();
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
        var next = AlarmLife.next(state, input, active, design.latched());
        if (next.isEmpty()) {
            return false;
        }
        state = next.get();
        if (state == AlarmState.UNACKNOWLEDGED) {
            announcedAt = at;
            announcements = input == AlarmInput.ANNOUNCE_AGAIN ? announcements + 1 : 1;
        }
        if (state != AlarmState.SHELVED) {
            shelvedUntil = null;
        }
        out.accept(new AlarmTransition(at, kind, subject, state, kind.priority(), incident, line(), values(input)));
        if (state == AlarmState.NORMAL) {
            incident = "";
        }
        return true;
    }

    private Map<String, Object> values(AlarmInput input) {
        if (input != AlarmInput.ANNOUNCE_AGAIN) {
            return known().values();
        }
        Map<String, Object> values = new LinkedHashMap<>(known().values());
        values.put(AlarmTransition.ANNOUNCEMENT, (double) announcements);
        return values;
    }

    private Condition known() {
        return condition == null ? Condition.of(kind.word(), "", null) : condition;
    }

    /** What an alarm line says. */
    private String line() {
        boolean eased = active && goneSince != null && state != AlarmState.OUT_OF_SERVICE;
        return (eased ? "Not so now, over if that lasts: " : "") + message();
    }

    private String message() {
        return active || state == AlarmState.OUT_OF_SERVICE
                ? known().message()
                : "Back to normal: " + known().message();
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
                raisedAt(),
                message(),
                c.why(),
                c.consequence().isEmpty() ? guidance.consequence() : c.consequence(),
                guidance.action(),
                active && goneSince == null ? c.deadline() : null,
                c.values(),
                active ? goneSince : null);
    }

    private static boolean past(Instant since, Duration delay, Instant at) {
        return !at.isBefore(since.plus(delay));
    }
}
