package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.tui.view.EventLog.Event;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The sheet of manual tests of one vessel: what was found last, what is due, and the entries of what is typed now. */
public final class TestSheet {
    /** A test that differs from the last by more than this factor is asked for again. */
    private static final double FAR = 5;

    private static final double NITRITE_MG_L = 1;

    private TestSheet() {}

    /** How often each is due in the system. Common practice, no source. */
    private static Duration every(TestKind kind) {
        return switch (kind) {
            case TOTAL_AMMONIA, NITRITE, PH -> Duration.ofDays(7);
            case NITRATE, ALKALINITY -> Duration.ofDays(14);
            case TOTAL_CHLORINE, FREE_CHLORINE -> Duration.ofDays(365);
        };
    }

    /** The last test of a kind in a vessel; null where none is on record. */
    public static @Nullable WaterTest last(Frame frame, String vessel, TestKind kind) {
        for (Event event : frame.log().newestFirst()) {
            if (event instanceof Event.Entry entry
                    && entry.entry() instanceof WaterTest test
                    && test.vessel().equals(vessel)
                    && test.quantity().equals(kind.word())) {
                return test;
            }
        }
        return null;
    }

    /** Such as {@code last 0.25 mg/L, 3 d ago; due}. */
    public static String hint(Frame frame, String vessel, TestKind kind) {
        WaterTest test = last(frame, vessel, kind);
        boolean reserve = frame.snapshot().site().vessel(vessel).stream()
                .anyMatch(v -> v.role() == bywash.rules.site.VesselRole.RESERVE);
        if (reserve) {
            boolean wanted =
                    kind == TestKind.TOTAL_CHLORINE && !frame.safeSources().contains(vessel);
            return words(test, frame.at()) + (wanted ? "; DUE before release" : "");
        }
        boolean rare = kind == TestKind.TOTAL_CHLORINE || kind == TestKind.FREE_CHLORINE;
        if (test == null) {
            return rare ? "" : "none on record; DUE";
        }
        Instant due = test.at().plus(every(kind));
        return words(test, frame.at())
                + (rare ? "" : due.isAfter(frame.at()) ? "; due in " + Words.shortSpan(frame.at(), due) : "; DUE");
    }

    private static String words(@Nullable WaterTest test, Instant now) {
        return test == null
                ? "none on record"
                : "last " + TestKind.words(test.quantity(), test.value()) + ", " + Words.shortSpan(test.at(), now)
                        + " ago";
    }

    /** Fields: vessel, then one value a kind; those left open are not entered. */
    public static FormCheck check(Frame frame, Filled filled) {
        String vessel = filled.text(0);
        List<String> problems = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        List<OperatorEntry> entries = new ArrayList<>();
        for (TestKind kind : TestKind.values()) {
            int field = 1 + kind.ordinal();
            if (filled.blank(field)) {
                continue;
            }
            double value = filled.number(field);
            if (!(value >= 0 && value <= kind.highest())) {
                problems.add(kind.label() + ": type a number, 0 to " + kind.words(kind.highest()) + ".");
            } else {
                entries.add(new WaterTest(frame.now(), vessel, kind.word(), value));
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
            warnings.add(kind.label() + " was " + kind.words(last.value()) + " last time; is " + kind.words(value)
                    + " typed right?");
        }
    }
}
