package bywash.tui.view;

import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.ProbeStatus.Health;
import bywash.rules.engine.Snapshot;
import bywash.rules.engine.VesselStatus;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is said while no alarm stands. A value outside its band whose alarm still waits is named, and so is what cannot be
 * known: a gap is never all is well.
 */
public record Headline(String text, Tone tone) {

    static Headline from(Frame frame) {
        Snapshot s = frame.snapshot();
        List<String> outside = s.probes().stream()
                .map(p -> ReadingLine.from(p, frame, 1))
                .filter(r -> r.tone() != Tone.PLAIN && !r.word().equals(ReadingLine.SUSPECT))
                .map(r -> r.name() + " is " + r.word() + " (" + r.value()
                        + (r.band().isEmpty() ? "" : ", good: " + r.band()) + ")")
                .toList();
        if (!outside.isEmpty()) {
            return new Headline(
                    "! " + String.join("; ", outside) + ". No alarm yet: it is raised when this lasts.", Tone.WARNING);
        }
        if (!s.feedUp()) {
            return new Headline("! The feed is lost: nothing below is fresh. " + s.feedDetail(), Tone.WARNING);
        }
        List<String> doubted = s.probes().stream()
                .filter(p -> !p.suspect().isEmpty())
                .map(p -> p.probe().id() + ": " + p.suspect())
                .toList();
        if (!doubted.isEmpty()) {
            return new Headline(
                    "No alarm, but readings are suspect: " + String.join("; ", doubted) + ". See probe care (c).",
                    Tone.PLAIN);
        }
        String unknown = unknown(frame);
        if (!unknown.isEmpty()) {
            return new Headline("No alarm, but not all is known yet: " + unknown + ".", Tone.PLAIN);
        }
        return new Headline("Nothing is wrong that the probes can see.", Tone.PLAIN);
    }

    private static String unknown(Frame frame) {
        Snapshot s = frame.snapshot();
        String waiting = s.probes().stream()
                .filter(p -> p.health() == Health.WAITING)
                .map(ProbeStatus::probe)
                .map(p -> p.id())
                .collect(Collectors.joining(", "));
        String learning = s.vessels().stream()
                .filter(Headline::learning)
                .map(v -> v.vessel().id())
                .collect(Collectors.joining(", "));
        String first = waiting.isEmpty() ? "" : "no reading from " + waiting;
        String second = learning.isEmpty() ? "" : "still learning how the level of " + learning + " moves";
        return Stream.of(first, second, TopUpProgress.open(frame))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static boolean learning(VesselStatus vessel) {
        var flow = vessel.flow();
        return flow != null && flow.verdict() == Verdict.LEARNING;
    }
}
