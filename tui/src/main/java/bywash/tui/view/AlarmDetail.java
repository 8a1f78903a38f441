package bywash.tui.view;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmRationale;
import bywash.rules.alarm.AlarmView;
import bywash.rules.alarm.Incident;
import bywash.rules.alarm.Priority;
import bywash.rules.engine.VesselStatus;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * All about one alarm: what is wrong, since when, why the tool thinks so, how long is left, what to do.
 *
 * @param left how long until what happens, for this alarm and those of its incident
 * @param action steps in order
 * @param cause what it follows from
 * @param follows the alarms that followed from it, in words
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
        String cause,
        List<String> follows,
        List<String> evidence,
        List<String> cautions) {
    private static final Duration JUST_NOW = Duration.ofMinutes(1);
    private static final String OVERFLOW_OF = "overflow of ";

    public AlarmDetail {
        action = List.copyOf(action);
        follows = List.copyOf(follows);
        evidence = List.copyOf(evidence);
        cautions = List.copyOf(cautions);
    }

    public static AlarmDetail from(AlarmView alarm, Frame frame) {
        Incident incident = Stories.of(alarm, frame);
        boolean chlorine = touchesChlorine(alarm.kind());
        return new AlarmDetail(
                AlarmLine.from(alarm, frame, false),
                alarm.priority().word() + ", " + alarm.state().word().replace('-', ' '),
                AlarmLine.message(alarm, frame),
                since(alarm, frame),
                left(alarm, frame),
                UsWords.water(alarm.why(), frame),
                UsWords.water(alarm.consequence(), frame),
                List.of(alarm.action().split("; ")),
                cause(alarm, incident),
                follows(alarm, incident, frame),
                chlorine ? evidence(alarm, frame) : List.of(),
                cautions(chlorine));
    }

    /** What was wrong, of an alarm that is over. */
    public String was() {
        return what.replaceFirst("^Back to normal: ", "");
    }

    /** When it began: of water that runs the start of the flow, which is before the alarm could be raised. */
    private static String since(AlarmView alarm, Frame frame) {
        Instant now = frame.at();
        ZoneId zone = frame.snapshot().site().timeZone();
        Instant raised = alarm.since();
        Instant began = flowBegan(alarm, frame);
        if (began == null || !began.isBefore(raised.minusSeconds(60))) {
            return Words.clock(raised, now, zone) + " (" + Words.span(raised, now) + ")";
        }
        return Words.clock(began, now, zone) + " (" + Words.span(began, now) + "), raised "
                + Words.clock(raised, now, zone);
    }

    private static @Nullable Instant flowBegan(AlarmView alarm, Frame frame) {
        boolean runs = alarm.kind() == AlarmKind.UNPLANNED_INFLOW || alarm.kind() == AlarmKind.UNPLANNED_LOSS;
        if (!runs || !AlarmLine.active(alarm)) {
            return null;
        }
        return frame.snapshot().vessels().stream()
                .filter(v -> v.vessel().id().equals(alarm.subject()))
                .map(VesselStatus::flow)
                .filter(flow -> flow != null && flow.since() != null)
                .map(flow -> flow.since())
                .findFirst()
                .orElse(null);
    }

    /** The alarm that a half-awake grower must see first; null when none stands. */
    public static @Nullable AlarmDetail first(Frame frame) {
        return firstAlarm(frame).map(alarm -> from(alarm, frame)).orElse(null);
    }

    /** Which alarm that is. */
    public static @Nullable AlarmKey firstKey(Frame frame) {
        return firstAlarm(frame).map(AlarmKey::of).orElse(null);
    }

    private static Optional<AlarmView> firstAlarm(Frame frame) {
        List<AlarmView> alarms = frame.snapshot().alarms();
        List<AlarmView> active = alarms.stream().filter(AlarmLine::active).toList();
        return active.stream()
                .filter(a -> a.priority() == Priority.CRITICAL && !onlyFull(a))
                .findFirst()
                .or(() -> active.stream().findFirst())
                .or(() -> alarms.stream().filter(AlarmLine::fresh).findFirst());
    }

    /** A vessel that is full, with nothing running into it, can wait for what harms the fish already. */
    private static boolean onlyFull(AlarmView alarm) {
        return alarm.kind() == AlarmKind.OVERFLOW_NEAR && alarm.deadline() == null;
    }

    /** What it follows from, or what such an alarm most often comes of. */
    private static String cause(AlarmView alarm, Incident incident) {
        String usual = "Most often " + AlarmRationale.of(alarm.kind()).cause() + ".";
        return alarm.equals(incident.cause())
                ? usual
                : "It followed " + name(incident.cause()) + ", see there. " + usual;
    }

    private static List<String> follows(AlarmView alarm, Incident incident, Frame frame) {
        if (!alarm.equals(incident.cause())) {
            return List.of();
        }
        return incident.alarms().stream()
                .skip(1)
                .map(a -> {
                    AlarmLine line = AlarmLine.from(a, frame, true);
                    return (line.mark() + " " + line.name() + ", " + line.state() + " " + line.since()).strip();
                })
                .toList();
    }

    private static String name(AlarmView alarm) {
        return alarm.kind().word() + " " + alarm.subject();
    }

    private static String left(AlarmView alarm, Frame frame) {
        Map<String, Instant> soonest = new LinkedHashMap<>();
        add(soonest, alarm, frame);
        for (AlarmView other : frame.snapshot().alarms()) {
            if (AlarmLine.active(other) && other.incident().equals(alarm.incident())) {
                add(soonest, other, frame);
            }
        }
        return soonest.isEmpty()
                ? within(alarm, frame)
                : soonest.entrySet().stream()
                        .sorted(Map.Entry.comparingByValue())
                        .map(e -> words(e.getKey(), e.getValue(), frame))
                        .collect(Collectors.joining("; "));
    }

    /** Where no time can be reckoned from the water: how soon somebody should be at it. */
    private static String within(AlarmView alarm, Frame frame) {
        if (!AlarmLine.active(alarm)) {
            return "it is over";
        }
        if (AlarmLine.eased(alarm, frame)) {
            return "it has eased";
        }
        Duration usual = AlarmRationale.of(alarm.kind()).respondWithin();
        Instant by = alarm.since().plus(usual);
        String clock = Words.clock(by, frame.at(), frame.snapshot().site().timeZone());
        return by.isAfter(frame.at())
                ? Words.span(frame.at(), by) + " to act in good time (" + clock + ")"
                : "act now: it should have been by " + clock;
    }

    /** Of two alarms that say when the same comes, the sooner counts. */
    private static void add(Map<String, Instant> soonest, AlarmView alarm, Frame frame) {
        Instant deadline = alarm.deadline();
        if (deadline != null) {
            soonest.merge(event(alarm, frame), deadline, (a, b) -> a.isBefore(b) ? a : b);
        }
    }

    private static String words(String event, Instant deadline, Frame frame) {
        Instant now = frame.at();
        String clock = Words.clock(deadline, now, frame.snapshot().site().timeZone());
        if (deadline.isAfter(now)) {
            String left = deadline.isBefore(now.plus(JUST_NOW)) ? "less than a minute" : Words.span(now, deadline);
            return left + " to " + event + " (" + clock + ")";
        }
        if (hasRoom(event, frame)) {
            return event + " now or at its next swing";
        }
        return event + (deadline.isBefore(now.minus(JUST_NOW)) ? " was due " + clock : " now");
    }

    /** Whether it is the overflow of a vessel that has room left between two swings. */
    private static boolean hasRoom(String event, Frame frame) {
        return frame.snapshot().vessels().stream()
                .anyMatch(v -> event.equals(OVERFLOW_OF + v.vessel().id()) && VesselLine.hasRoom(v));
    }

    private static String event(AlarmView alarm, Frame frame) {
        return switch (alarm.kind()) {
            case UNPLANNED_INFLOW, OVERFLOW_NEAR, LINE_NOT_SHUT -> OVERFLOW_OF + alarm.subject();
            case UNPLANNED_LOSS -> alarm.subject() + " dry";
            case CHLORINE_RISK, UNSAFE_RELEASE ->
                Words.number(frame.snapshot().residual().acute().limitUgL(), 0) + " ug/L chlorine"
                        + (frame.snapshot().residual().doubted() ? " by the balance alone" : "");
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

    /** What the reason does not say already. */
    private static List<String> evidence(AlarmView alarm, Frame frame) {
        return frame.snapshot().residual().evidence().stream()
                .filter(line -> !alarm.why().contains(line))
                .map(line -> UsWords.water(line, frame))
                .toList();
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
