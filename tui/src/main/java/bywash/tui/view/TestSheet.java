package bywash.tui.view;

import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.tests.TestDue;
import bywash.rules.husbandry.tests.TestSchedule;
import bywash.rules.recovery.RecoveryView;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The sheet of manual tests of one vessel: what was found last, what is due, and the entries of what is typed now. */
public final class TestSheet {
    /** A test that differs from the last by more than this factor is asked for again. */
    private static final double FAR = 5;

    private static final double NITRITE_MG_L = 1;

    private TestSheet() {}

    /** The last test of a kind in a vessel; null where none is on record. */
    public static @Nullable WaterTest last(Frame frame, String vessel, TestKind kind) {
        return last(frame, t -> t.vessel().equals(vessel) && t.quantity().equals(kind.word()));
    }

    private static @Nullable WaterTest last(Frame frame, Predicate<WaterTest> which) {
        List<WaterTest> tests = frame.snapshot().tests();
        for (int i = tests.size() - 1; i >= 0; i--) {
            if (which.test(tests.get(i))) {
                return tests.get(i);
            }
        }
        return null;
    }

    /** The schedule of the water in the loop, the soonest first. */
    static List<TestDue> schedule(Frame frame) {
        Snapshot s = frame.snapshot();
        RecoveryView recovery = s.care().recovery();
        return TestSchedule.of(
                frame.at(),
                s.stocking(),
                quantity -> last(frame, t -> t.quantity().equals(quantity) && !reserve(frame, t.vessel())),
                recovery == null ? List.of() : recovery.tests());
    }

    /** Such as {@code due in 4 d; last 0.25, 3 d ago}; the unit stands beside the field. */
    public static String hint(Frame frame, String vessel, TestKind kind) {
        WaterTest test = last(frame, vessel, kind);
        if (reserve(frame, vessel)) {
            boolean wanted =
                    kind == TestKind.TOTAL_CHLORINE && !frame.safeSources().contains(vessel);
            return (wanted ? "DUE before release; " : "") + words(test, frame);
        }
        TestDue due = schedule(frame).stream()
                .filter(d -> d.quantity().equals(kind.word()))
                .findFirst()
                .orElse(null);
        if (due == null) {
            return test == null ? "" : words(test, frame);
        }
        return due(due.dueAt(), frame.at()) + "; " + words(due.last(), frame);
    }

    /** Such as {@code due in 4 d}, {@code DUE}, {@code OVERDUE by 6 d}. */
    static String due(Instant dueAt, Instant now) {
        if (dueAt.isAfter(now)) {
            return "due in " + Words.shortSpan(now, dueAt);
        }
        return dueAt.equals(now) ? "DUE" : "OVERDUE by " + Words.shortSpan(dueAt, now);
    }

    /** What is due of the water in the loop, and why, in two lines. */
    public static List<String> due(Frame frame) {
        List<TestDue> all = schedule(frame);
        List<String> lines = new ArrayList<>();
        Map<String, List<String>> now = new LinkedHashMap<>();
        for (TestDue test : all) {
            if (test.due(frame.at())) {
                now.computeIfAbsent(test.why(), why -> new ArrayList<>()).add(label(test.quantity()));
            }
        }
        String words = now.entrySet().stream()
                .map(e -> String.join(", ", e.getValue()) + " (" + e.getKey() + ")")
                .collect(Collectors.joining("; "));
        lines.add(now.isEmpty() ? "No test is due." : "! Due: " + words + ".");
        all.stream()
                .filter(t -> !t.due(frame.at()))
                .findFirst()
                .ifPresent(t -> lines.add("Next: " + label(t.quantity()) + " in "
                        + Words.shortSpan(frame.at(), t.dueAt()) + " (" + t.why() + ")."));
        return lines;
    }

    private static String label(String quantity) {
        return TestKind.label(quantity);
    }

    private static boolean reserve(Frame frame, String vessel) {
        return frame.snapshot().site().isReserve(vessel);
    }

    private static String words(@Nullable WaterTest test, Frame frame) {
        return test == null
                ? "none on record"
                : "last " + TestKind.value(test.quantity(), test.value(), DisplayUnits.of(frame)) + ", "
                        + Words.shortSpan(test.at(), frame.at()) + " ago";
    }

    /** Fields: vessel, then one value a kind, when; values left open are not entered. */
    public static FormCheck check(Frame frame, Filled filled) {
        String vessel = filled.text(0);
        List<String> problems = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        List<OperatorEntry> entries = new ArrayList<>();
        Instant when = EntryTime.parse(
                filled.text(1 + TestKind.values().length),
                frame.now(),
                frame.snapshot().site().timeZone());
        if (when == null) {
            problems.add(EntryTime.RIGHT);
        }
        Instant at = when == null ? frame.now() : when;
        DisplayUnits units = DisplayUnits.of(frame);
        for (TestKind kind : TestKind.values()) {
            int field = 1 + kind.ordinal();
            if (filled.blank(field)) {
                continue;
            }
            double value = kind.fixed(filled.number(field), units);
            if (!(value >= kind.lowest() && value <= kind.highest())) {
                problems.add(kind.label() + ": type a number, " + Words.number(kind.shown(kind.lowest(), units), 0)
                        + " to " + kind.words(kind.highest(), units) + ".");
            } else {
                entries.add(new WaterTest(at, vessel, kind.word(), value));
                warn(frame, vessel, kind, value, warnings);
            }
        }
        if (entries.isEmpty() && problems.isEmpty()) {
            problems.add("Type at least one value; leave open what was not tested.");
        }
        String done = entries.size() == 1 ? "One test entered." : entries.size() + " tests entered.";
        return problems.isEmpty()
                ? new FormCheck(problems, warnings, entries, done)
                : FormCheck.open(problems, warnings);
    }

    private static boolean far(double value, double before) {
        return value > 0 && before > 0 && (value > before * FAR || value < before / FAR);
    }

    private static void warn(Frame frame, String vessel, TestKind kind, double value, List<String> warnings) {
        if (kind == TestKind.NITRITE && value > NITRITE_MG_L) {
            warnings.add("Nitrite above 1 mg/L raises an alarm.");
        }
        WaterTest last = last(frame, vessel, kind);
        if (last != null && far(value, last.value())) {
            DisplayUnits units = DisplayUnits.of(frame);
            warnings.add(kind.label() + " was " + kind.words(last.value(), units) + " last time; is "
                    + kind.words(value, units) + " typed right?");
        }
    }
}
