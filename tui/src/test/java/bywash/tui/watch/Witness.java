package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.AlarmView;
import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Quantity;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Holds against the watch what it has promised and shown. Each check begins with the name of what must hold. */
final class Witness {
    /** How long after its last word a probe may be silent before an alarm must stand. */
    private static final Duration NOTICED = Duration.ofMinutes(3);
    /** How old a reading may be and still be called good: three intervals and some rounds. */
    private static final Duration GOOD_FOR = Duration.ofSeconds(125);
    /** Event time of a round, and of a disk that hangs meanwhile. */
    private static final Duration ROUND = Duration.ofMinutes(5);

    private static final ObjectMapper JSON = new ObjectMapper();

    /**
     * What had been promised and shown at one moment.
     *
     * @param solid of the lines, those that were on the disk
     */
    record Mark(int entries, int lines, int solid) {}

    private final FaultyWorld world;
    private final List<OperatorEntry> entries = new ArrayList<>();
    private final List<OperatorEntry> waiting = new ArrayList<>();
    private int solid;
    private final List<String> lines = new ArrayList<>();
    private final Map<String, String> states = new TreeMap<>();
    private int folded;
    private Instant listeningSince = Instant.MAX;
    private Instant linkChanged = Instant.MAX;
    private boolean linkUp;

    Witness(FaultyWorld world) {
        this.world = world;
    }

    Mark mark() {
        return new Mark(entries.size(), lines.size(), solid);
    }

    /** What came after it was never shown: the process was dead. */
    void backTo(Mark mark) {
        entries.subList(mark.entries(), entries.size()).clear();
        lines.subList(mark.lines(), lines.size()).clear();
        waiting.clear();
        solid = mark.solid();
        states.clear();
        folded = 0;
    }

    /** @param kept on the disk; else the watch has said that it is not there yet */
    void entered(OperatorEntry entry, boolean kept) {
        (kept ? entries : waiting).add(entry);
    }

    /** All that was entered and shown is on the disk. */
    void solid() {
        entries.addAll(waiting);
        waiting.clear();
        solid = lines.size();
    }

    List<OperatorEntry> kept() {
        return List.copyOf(entries);
    }

    void link(boolean up, Instant now) {
        linkUp = up;
        linkChanged = now;
        listeningSince = up ? now : listeningSince;
    }

    /** The watch listens anew from here on; it has until {@link #NOTICED} to miss anybody. */
    void listens(Instant since) {
        listeningSince = since;
    }

    void line(AlarmTransition t, String line) {
        assertTrue(
                line.chars().noneMatch(c -> c < 0x20 || (c >= 0x7f && c <= 0x9f)),
                () -> "no control characters: " + line);
        fold();
        lines.add(line);
        String name = t.kind().word() + " " + t.subject();
        boolean acknowledged = AlarmState.ACKNOWLEDGED.word().equals(states.get(name));
        if (t.state() == AlarmState.RETURNED_UNACKNOWLEDGED || (t.state() == AlarmState.NORMAL && acknowledged)) {
            goneOnEvidence(t);
        }
    }

    /** An alarm that rests on one probe may only go when that probe speaks. */
    private void goneOnEvidence(AlarmTransition t) {
        for (String probe : probes(t)) {
            Instant last = t.kind() == AlarmKind.PROBE_SILENT ? world.spoken(probe) : world.fresh(probe);
            assertFalse(
                    t.at().minus(GOOD_FOR).isAfter(last),
                    () -> "no all-clear without a reading: " + t.kind() + " went at " + t.at() + ", " + probe
                            + " last heard " + last);
        }
    }

    /** It has an alarm of its own for that. */
    private boolean talksNonsense(String probe) {
        return states.containsKey(AlarmKind.PROBE_IMPLAUSIBLE.word() + " " + probe);
    }

    private List<String> probes(AlarmTransition t) {
        return switch (t.kind()) {
            case LOW_OXYGEN -> List.of("fish-do");
            case PH_LOW, PH_HIGH -> List.of("fish-ph");
            case TEMPERATURE_LOW, TEMPERATURE_HIGH, TEMPERATURE_SWING -> List.of("fish-temp");
            case ORP_LOW -> List.of("fish-orp");
            case PUMP_STOPPED -> List.of("pump");
            case PROBE_SILENT, PROBE_STUCK -> talksNonsense(t.subject()) ? List.of() : List.of(t.subject());
            default -> List.of();
        };
    }

    /**
     * Of what was shown all is on the record, but for the last lines where they had no room and waited in memory; the lines
     * of one round more may be, which were kept and not yet shown.
     */
    void onRecord(List<String> record, String how) {
        int most = Math.min(record.size(), lines.size());
        lines.subList(Math.max(solid, most), lines.size()).clear();
        assertEquals(lines, record.subList(0, most), "no shown alarm line lost: " + how);
        List<String> more = record.subList(most, record.size());
        lines.addAll(more);
        Instant first = more.isEmpty() ? Instant.MAX : time(more.get(0));
        assertTrue(
                more.stream().noneMatch(line -> time(line).isAfter(first.plus(ROUND))),
                () -> "lines kept, not shown: " + more);
    }

    private static Instant time(String line) {
        return Instant.parse(json(line).path("time").asText());
    }

    private static JsonNode json(String line) {
        try {
            return JSON.readTree(line);
        } catch (JsonProcessingException e) {
            throw new AssertionError(line, e);
        }
    }

    /** What the lines add up to is what the screen shows. */
    void alarms(Snapshot snapshot, String when) {
        fold();
        assertEquals(states, states(snapshot), "no alarm forgotten: " + when);
    }

    private void fold() {
        for (; folded < lines.size(); folded++) {
            JsonNode line = json(lines.get(folded));
            String name =
                    line.path("alarm").asText() + " " + line.path("subject").asText();
            states.put(name, line.path("state").asText());
        }
        states.values().removeIf(AlarmState.NORMAL.word()::equals);
    }

    static Map<String, String> states(Snapshot snapshot) {
        Map<String, String> states = new TreeMap<>();
        for (AlarmView alarm : snapshot.alarms()) {
            states.put(
                    alarm.kind().word() + " " + alarm.subject(), alarm.state().word());
        }
        return states;
    }

    void silence(Snapshot snapshot, Instant now) {
        for (ProbeStatus probe : snapshot.probes()) {
            String id = probe.probe().id();
            Instant last = world.fresh(id);
            boolean state = probe.probe().quantity() == Quantity.STATE; // kept by the broker on purpose
            if (probe.health() == ProbeStatus.Health.GOOD && !state) {
                assertFalse(
                        now.minus(GOOD_FOR).isAfter(last),
                        () -> "no stale value passes for good: " + id + " last heard " + last + ", now " + now);
            }
            silent(snapshot, probe, now);
        }
        if (!linkUp && Duration.between(linkChanged, now).toSeconds() > 10) {
            assertFalse(snapshot.feedUp(), "no lost feed passes for up: " + now);
        }
    }

    private void silent(Snapshot snapshot, ProbeStatus probe, Instant now) {
        String id = probe.probe().id();
        Instant last = probe.at();
        boolean silent = last == null || Duration.between(last, now).compareTo(NOTICED) > 0;
        boolean listenedLong = Duration.between(listeningSince, now).compareTo(NOTICED) > 0;
        boolean alarm = snapshot.alarms().stream()
                .anyMatch(a -> a.kind() == AlarmKind.FEED_LOST
                        || ((a.kind() == AlarmKind.PROBE_SILENT || a.kind() == AlarmKind.PROBE_IMPLAUSIBLE)
                                && a.subject().equals(id)));
        assertTrue(
                !silent || !listenedLong || alarm,
                () -> "no silence passes for all well: " + id + " silent since " + last + " without an alarm at "
                        + now);
    }
}
