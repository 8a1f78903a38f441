package bywash.tui.view;

import bywash.rules.alarm.AlarmFigure;
import bywash.rules.alarm.AlarmPerformance;
import bywash.rules.alarm.AlarmRates;
import bywash.rules.alarm.AlarmRationale;
import bywash.rules.alarm.AlarmTransition;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** How well the alarms of the last month served: rates against published marks, answers, what they come of. */
public final class AlarmPerformanceView {
    private static final int DAYS = 30;
    /** What was raised before the month and still stands began at most so much earlier. */
    private static final Duration BEFORE = Duration.ofDays(30);

    private AlarmPerformanceView() {}

    public static List<Passage> from(Frame frame) {
        Instant to = frame.at().plusMillis(1);
        Instant from = to.minus(Duration.ofDays(DAYS));
        List<AlarmTransition> transitions = new ArrayList<>();
        for (EventLog.Event event : frame.log().between(from.minus(BEFORE), to)) {
            if (event instanceof EventLog.Event.Alarm alarm) {
                transitions.add(alarm.transition());
            }
        }
        Collections.reverse(transitions);
        AlarmPerformance performance = AlarmPerformance.of(transitions, from, to);
        List<Passage> out = new ArrayList<>();
        out.add(Passage.plain("last " + DAYS + " days", glance(performance)));
        performance.figures().stream().skip(1).forEach(f -> out.add(figure(f)));
        answers(performance, out);
        most(performance, out);
        out.add(Passage.plain("", ""));
        out.add(Passage.plain(
                "",
                "The marks were made for a plant with an operator at a desk; for one who sleeps, fewer are better still."
                        + " Those of ISA-18.2 are from memory."));
        return out;
    }

    private static String glance(AlarmPerformance performance) {
        int late = performance.answers().stream()
                .mapToInt(AlarmPerformance.Answer::late)
                .sum();
        int raised = performance.answers().stream()
                .mapToInt(AlarmPerformance.Answer::raised)
                .sum();
        if (raised == 0) {
            return "no alarm was raised";
        }
        return raised + (raised == 1 ? " alarm" : " alarms") + " raised, " + (late == 0 ? "none" : late)
                + " answered late or not at all";
    }

    private static Passage figure(AlarmFigure f) {
        String value = Words.number(f.value(), f.decimals()) + ", at most " + Words.number(f.most(), 0) + " ("
                + f.source().replace(", from memory", "") + ")";
        return f.verdict() == AlarmFigure.Verdict.MISSED
                ? new Passage(f.what(), "! " + value + ": MISSED", Tone.WARNING)
                : Passage.plain(f.what(), value);
    }

    private static void answers(AlarmPerformance performance, List<Passage> out) {
        if (performance.answers().isEmpty()) {
            return;
        }
        out.add(Passage.plain("", ""));
        out.add(Passage.plain("answered", "how soon, and what they most often come of"));
        for (AlarmPerformance.Answer a : performance.answers()) {
            AlarmRationale rationale = AlarmRationale.of(a.kind());
            String late = a.late() == 0 ? "" : "! ";
            String median = Double.isNaN(a.medianMin())
                    ? "never acknowledged"
                    : "median " + Words.number(Math.floor(a.medianMin()), 0) + " min, slowest "
                            + Words.number(Math.floor(a.slowestMin()), 0) + " min";
            out.add(new Passage(
                    a.kind().word(),
                    late + a.raised() + " raised: " + a.inTime() + " in time, " + a.late() + " late; wanted within "
                            + rationale.respondWithin().toMinutes() + " min, " + median + "; "
                            + rationale.cause(),
                    a.late() == 0 ? Tone.PLAIN : Tone.WARNING));
        }
    }

    private static void most(AlarmPerformance performance, List<Passage> out) {
        if (performance.most().isEmpty()) {
            return;
        }
        out.add(Passage.plain("", ""));
        String label = "most often";
        for (AlarmRates.Count c : performance.most()) {
            int chattered = performance.chattering().stream()
                    .filter(x -> x.alarm().equals(c.alarm()))
                    .mapToInt(AlarmRates.Count::raised)
                    .sum();
            String words = c.raised() + " x " + c.alarm();
            out.add(
                    chattered == 0
                            ? Passage.plain(label, words)
                            : new Passage(label, "! " + words + ", chattered " + chattered + " x", Tone.WARNING));
            label = "";
        }
    }
}
