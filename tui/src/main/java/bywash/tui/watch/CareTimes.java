package bywash.tui.watch;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** When somebody was at a probe, by the entries: what it read then says nothing of the water. */
final class CareTimes {
    /** As in the rules: nothing counts as care for longer. */
    private static final Duration LONGEST = Duration.ofHours(24);

    /** From inclusive, to exclusive. */
    record Span(Instant from, Instant to) {}

    private final Map<String, List<Span>> spans = new HashMap<>();

    /** Takes the next entry, in the order they were entered. */
    void entry(OperatorEntry entry) {
        if (entry instanceof MaintenanceStart start) {
            end(start.subject(), start.at());
            Duration duration = start.duration().compareTo(LONGEST) > 0 ? LONGEST : start.duration();
            spans.computeIfAbsent(start.subject(), s -> new ArrayList<>())
                    .add(new Span(start.at(), start.at().plus(duration)));
        } else if (entry instanceof MaintenanceEnd end) {
            end(end.subject(), end.at());
        }
    }

    private void end(String subject, Instant at) {
        List<Span> of = spans.getOrDefault(subject, List.of());
        Span last = of.isEmpty() ? null : of.get(of.size() - 1);
        if (last != null && last.to().isAfter(at)) {
            of.set(of.size() - 1, new Span(last.from(), at));
        }
    }

    /** The parts of a span with nobody at the probe, oldest first. */
    List<Span> quiet(String probe, Instant from, Instant to) {
        List<Span> quiet = new ArrayList<>();
        Instant begin = from;
        for (Span care : spans.getOrDefault(probe, List.of())) {
            if (care.to().isAfter(begin) && care.from().isBefore(to)) {
                Instant before = startOfMinute(care.from());
                if (before.isAfter(begin)) {
                    quiet.add(new Span(begin, before));
                }
                begin = care.to();
            }
        }
        if (begin.isBefore(to)) {
            quiet.add(new Span(begin, to));
        }
        return quiet;
    }

    /** A minute in which care began is left out. */
    private static Instant startOfMinute(Instant at) {
        return at.truncatedTo(ChronoUnit.MINUTES);
    }
}
