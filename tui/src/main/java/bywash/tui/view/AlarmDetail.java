package bywash.tui.view;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * All about one alarm: what is wrong, since when, why the tool thinks so, how long is left, what to do.
 *
 * @param left how long until what happens, for this alarm and those of its incident
 * @param action steps in order
 * @param together the other alarms of the same incident, in words; empty when it stands alone
 */
public record AlarmDetail(
        AlarmLine line,
        String title,
        String what,
        String since,
        String left,
        String why,
        String consequence,
        List<String> action,
        String together,
        List<String> evidence,
        List<String> cautions) {
    public AlarmDetail {
        action = List.copyOf(action);
        evidence = List.copyOf(evidence);
        cautions = List.copyOf(cautions);
    }

    public static AlarmDetail from(AlarmView alarm, Frame frame) {
        Instant now = frame.at();
        ZoneId zone = frame.snapshot().site().timeZone();
        boolean chlorine = touchesChlorine(alarm.kind());
        return new AlarmDetail(
                AlarmLine.from(alarm, frame),
                alarm.priority().word() + ", " + alarm.state().word().replace('-', ' '),
                alarm.message(),
                Words.clock(alarm.since(), now, zone) + " (" + Words.span(alarm.since(), now) + ")",
                left(alarm, frame),
                alarm.why(),
                alarm.consequence(),
                List.of(alarm.action().split("; ")),
                together(alarm, frame),
                chlorine ? frame.snapshot().residual().evidence() : List.of(),
                cautions(chlorine));
    }

    /** The alarm that a half-awake grower must see first; null when none stands. */
    public static @Nullable AlarmDetail first(Frame frame) {
        List<AlarmView> alarms = frame.snapshot().alarms();
        return alarms.stream()
                .filter(AlarmLine::active)
                .findFirst()
                .or(() -> alarms.stream().filter(AlarmLine::fresh).findFirst())
                .map(alarm -> from(alarm, frame))
                .orElse(null);
    }

    private static String together(AlarmView alarm, Frame frame) {
        return frame.snapshot().alarms().stream()
                .filter(a ->
                        a.incident().equals(alarm.incident()) && !AlarmKey.of(a).equals(AlarmKey.of(alarm)))
                .map(a -> a.kind().word() + " " + a.subject() + " ("
                        + AlarmLine.from(a, frame).state() + ")")
                .collect(Collectors.joining(", "));
    }

    private static String left(AlarmView alarm, Frame frame) {
        Set<String> parts = new LinkedHashSet<>();
        add(parts, alarm, frame);
        for (AlarmView other : frame.snapshot().alarms()) {
            if (AlarmLine.active(other) && other.incident().equals(alarm.incident())) {
                add(parts, other, frame);
            }
        }
        return parts.isEmpty() ? "not known" : String.join("; ", parts);
    }

    private static void add(Set<String> parts, AlarmView alarm, Frame frame) {
        Instant deadline = alarm.deadline();
        if (deadline == null) {
            return;
        }
        Instant now = frame.at();
        String event = event(alarm);
        String clock = Words.clock(deadline, now, frame.snapshot().site().timeZone());
        parts.add(
                deadline.isAfter(now)
                        ? Words.span(now, deadline) + " to " + event + " (" + clock + ")"
                        : event + " was due " + clock);
    }

    private static String event(AlarmView alarm) {
        return switch (alarm.kind()) {
            case UNPLANNED_INFLOW, OVERFLOW_NEAR, LINE_NOT_SHUT -> "overflow of " + alarm.subject();
            case UNPLANNED_LOSS -> alarm.subject() + " dry";
            case CHLORINE_RISK, UNSAFE_RELEASE -> "19 ug/L chlorine";
            default -> "harm";
        };
    }

    private static boolean touchesChlorine(AlarmKind kind) {
        return switch (kind) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT, UNSAFE_RELEASE, CHLORINE_RISK, OVERFLOW_NEAR, BIOFILTER_SETBACK ->
                true;
            default -> false;
        };
    }

    private static List<String> cautions(boolean chlorine) {
        List<String> cautions = new ArrayList<>();
        if (chlorine) {
            cautions.add("Estimates are no test: confirm chlorine with a DPD kit before acting where time allows.");
        }
        cautions.add(
                "Doses: follow the label, wear gloves and eye protection, add acid to water, never mix chemicals.");
        cautions.add("Fish welfare, food safety and discharge follow local rules and licensed practice.");
        return cautions;
    }
}
