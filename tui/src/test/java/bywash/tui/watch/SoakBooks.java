package bywash.tui.watch;

import bywash.ingest.journal.JournalReader;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What a watch showed in a soak, held against its record and against what really befell it. */
final class SoakBooks {
    /** Of one feed: when it is wrong for longer than this after its cause is over, the cause does not excuse it. */
    private static final Duration SETTLES = Duration.ofMinutes(10);

    private static final Duration INFLOW_COUNTS = Duration.ofHours(24);

    private final SoakPlan plan;
    private final List<String> lines = new ArrayList<>();
    private final List<OperatorEntry> entries = new ArrayList<>();
    private final Map<String, String> states = new TreeMap<>();
    private final Map<String, Integer> raised = new TreeMap<>();
    private final List<String> falseAlarms = new ArrayList<>();
    private final List<Instant> inflowsFound = new ArrayList<>();
    int lostLines;
    int lostEntries;
    int forgotten;

    SoakBooks(SoakPlan plan) {
        this.plan = plan;
    }

    void line(AlarmTransition t, String line) {
        lines.add(line);
        String name = t.kind().word() + " " + t.subject();
        String before = states.put(name, t.state().word());
        if (t.state() == AlarmState.NORMAL) {
            states.remove(name);
        }
        if (before == null && t.state() == AlarmState.UNACKNOWLEDGED) {
            raised.merge(t.kind().word(), 1, Integer::sum);
            if (!caused(t)) {
                falseAlarms.add(t.at() + " " + name + ": " + t.message() + "; before it: " + plan.before(t.at()));
            }
            if (t.kind() == AlarmKind.UNPLANNED_INFLOW && plan.afterInflow(t.at(), Duration.ofHours(1))) {
                inflowsFound.add(t.at());
            }
        }
    }

    void entered(OperatorEntry entry) {
        entries.add(entry);
    }

    private boolean caused(AlarmTransition t) {
        Instant at = t.at();
        boolean inflow = plan.afterInflow(at, INFLOW_COUNTS);
        return switch (t.kind()) {
            case FEED_LOST -> plan.was(SoakPlan.What.BROKER_GONE, at, SETTLES);
            case PROBE_SILENT ->
                plan.was(SoakPlan.What.PROBE_GAP, at, SETTLES) || plan.was(SoakPlan.What.BROKER_GONE, at, SETTLES);
            // nobody lets the water out again that ran in
            case OVERFLOW_NEAR -> plan.afterInflow(at, Duration.ofDays(plan.days));
            case UNPLANNED_INFLOW, CHLORINE_RISK, ORP_RISE, BIOFILTER_SETBACK -> inflow;
            // the simulated site's pump really stops, and its reserve is never tested before a top-up
            case PUMP_STOPPED, UNSAFE_RELEASE -> true;
            default -> false;
        };
    }

    /** Of a watch that has just begun: all that was shown is on its record, and every alarm stands. */
    void check(Path state, String site, FrameSource frame) throws IOException {
        try (JournalReader reader = JournalReader.open(state, site)) {
            List<String> onRecord = reader.transitions(Instant.EPOCH, plan.start.plus(Duration.ofDays(3650)));
            List<String> missing =
                    new ArrayList<>(lines.subList(Math.min(onRecord.size(), lines.size()), lines.size()));
            for (int i = 0; i < Math.min(onRecord.size(), lines.size()); i++) {
                if (!onRecord.get(i).equals(lines.get(i))) {
                    missing.add(lines.get(i));
                }
            }
            lostLines += missing.size();
            List<OperatorEntry> lost = new ArrayList<>(entries);
            reader.entries(Instant.EPOCH, plan.start.plus(Duration.ofDays(3650)))
                    .forEach(e -> lost.remove(e.entry()));
            lostEntries += lost.size();
        }
        if (!Witness.states(frame.snapshot()).equals(states)) {
            forgotten++;
            System.out.println(
                    "alarms differ after a restart: " + states + " became " + Witness.states(frame.snapshot()));
        }
    }

    int shown() {
        return lines.size();
    }

    int entries() {
        return entries.size();
    }

    void print() {
        System.out.println("alarms raised, by kind: " + raised);
        System.out.println(
                "inflows let in and found within an hour: " + plan.inflows().size() + " and "
                        + plan.inflows().stream().filter(this::found).count());
        System.out.println("alarms without a cause: " + falseAlarms.size());
        falseAlarms.forEach(a -> System.out.println("  " + a));
        System.out.println("alarm lines shown: " + lines.size() + ", lost: " + lostLines);
        System.out.println("entries taken down: " + entries.size() + ", lost: " + lostEntries);
        System.out.println("restarts after which an alarm was forgotten or changed: " + forgotten);
    }

    private boolean found(Instant inflow) {
        return inflowsFound.stream().anyMatch(f -> !f.isBefore(inflow) && f.isBefore(inflow.plus(Duration.ofHours(1))));
    }
}
