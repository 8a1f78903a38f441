package bywash.rules.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * How well the alarms of a span served the one who answers them. Marks of EEMUA Publication 191 are from a secondary sheet
 * of its key figures, those of ANSI/ISA-18.2 and IEC 62682 from memory. They were made for a plant with an operator at a
 * desk; for a grower who sleeps, fewer are better still.
 *
 * @param figures each with its mark
 * @param answers for each kind that was raised, how soon it was answered; in the order of kinds
 * @param most the alarms raised most often
 * @param chattering alarms raised three times within a minute, and how often
 */
public record AlarmPerformance(
        List<AlarmFigure> figures,
        List<Answer> answers,
        List<AlarmRates.Count> most,
        List<AlarmRates.Count> chattering,
        List<AlarmRates.Flood> floods) {
    private static final String EEMUA = "EEMUA 191";
    private static final String ISA = "ISA-18.2, from memory";
    private static final Duration FLEETING = Duration.ofMinutes(1);
    private static final Duration STALE = Duration.ofHours(24);
    private static final int TOP = 10;

    public AlarmPerformance {
        figures = List.copyOf(figures);
        answers = List.copyOf(answers);
        most = List.copyOf(most);
        chattering = List.copyOf(chattering);
        floods = List.copyOf(floods);
    }

    /**
     * How soon alarms of one kind were answered.
     *
     * @param raised how often
     * @param inTime answered, or over, within the time its rationale gives
     * @param late answered later, or not at all though that time has passed
     * @param medianMin of those answered, minutes; NaN where none was
     * @param slowestMin likewise
     */
    public record Answer(AlarmKind kind, int raised, int inTime, int late, double medianMin, double slowestMin) {}

    /**
     * Of a span.
     *
     * @param transitions up to its end, oldest first; those before it count for what still stood
     * @param to the end, or now
     */
    public static AlarmPerformance of(List<AlarmTransition> transitions, Instant from, Instant to) {
        AlarmRates rates = new AlarmRates();
        transitions.stream().filter(t -> !t.at().isBefore(from)).forEach(rates::add);
        rates.advance(to);
        List<AlarmSpell> spells = AlarmSpell.of(transitions);
        List<AlarmSpell> raised =
                spells.stream().filter(s -> !s.raised().at().isBefore(from)).toList();
        return new AlarmPerformance(
                figures(rates, spells, raised, from, to),
                answers(raised, to),
                rates.mostFrequent(TOP),
                rates.chattering(),
                rates.floods());
    }

    private static List<AlarmFigure> figures(
            AlarmRates rates, List<AlarmSpell> spells, List<AlarmSpell> raised, Instant from, Instant to) {
        Duration span = Duration.between(from, to);
        double days = span.toSeconds() / 86_400.0;
        Duration flood = Duration.ZERO;
        for (AlarmRates.Flood f : rates.floods()) {
            flood = flood.plus(Duration.between(f.from(), f.to() == null ? to : f.to()));
        }
        List<AlarmFigure> all = new ArrayList<>();
        all.add(new AlarmFigure("raised", rates.raised(), Double.NaN, 0, ""));
        all.add(new AlarmFigure("a day, mean", days > 0 ? rates.raised() / days : Double.NaN, 120, 1, EEMUA));
        all.add(new AlarmFigure("10 min, mean", rates.meanTenMinutes(span), 1, 3, EEMUA));
        all.add(new AlarmFigure("10 min, most", rates.peakTenMinutes(), 10, 0, EEMUA));
        all.add(new AlarmFigure("an hour, most", rates.peakHour(), 15, 0, EEMUA));
        all.add(new AlarmFigure("a minute, most", rates.peakMinute(), 2, 0, EEMUA));
        all.add(new AlarmFigure(
                "time in flood, %", days > 0 ? 100.0 * flood.toSeconds() / span.toSeconds() : Double.NaN, 1, 2, ISA));
        all.add(new AlarmFigure("chattering", rates.chattering().size(), 0, 0, ISA));
        all.add(new AlarmFigure("over in a minute", fleeting(raised), 0, 0, ISA));
        all.add(new AlarmFigure("stale, over 1 d", stale(spells, from, to), 5, 0, ISA));
        return all;
    }

    private static long fleeting(List<AlarmSpell> raised) {
        return raised.stream()
                .filter(s -> s.end() == AlarmState.NORMAL || s.end() == AlarmState.RETURNED_UNACKNOWLEDGED)
                .filter(s -> s.stood(s.raised().at()).compareTo(FLEETING) < 0)
                .count();
    }

    private static long stale(List<AlarmSpell> spells, Instant from, Instant to) {
        return spells.stream()
                .filter(s -> s.within(from, to) && s.stood(to).compareTo(STALE) > 0)
                .count();
    }

    private static List<Answer> answers(List<AlarmSpell> raised, Instant to) {
        Map<AlarmKind, List<AlarmSpell>> byKind = new TreeMap<>();
        raised.forEach(
                s -> byKind.computeIfAbsent(s.kind(), k -> new ArrayList<>()).add(s));
        List<Answer> all = new ArrayList<>();
        byKind.forEach((kind, spells) -> all.add(answer(kind, spells, to)));
        return all;
    }

    private static Answer answer(AlarmKind kind, List<AlarmSpell> spells, Instant to) {
        Duration within = AlarmRationale.of(kind).respondWithin();
        int inTime = 0;
        int late = 0;
        List<Double> minutes = new ArrayList<>();
        for (AlarmSpell s : spells) {
            @Nullable Instant answered = s.acknowledged();
            Instant due = s.raised().at().plus(within);
            @Nullable Instant over = s.over();
            if (answered != null) {
                minutes.add(Duration.between(s.raised().at(), answered).toSeconds() / 60.0);
            }
            if ((answered != null && !answered.isAfter(due)) || (over != null && !over.isAfter(due))) {
                inTime++;
            } else if (answered != null || to.isAfter(due)) {
                late++;
            }
        }
        minutes.sort(null);
        int n = minutes.size();
        double median = n == 0 ? Double.NaN : (minutes.get((n - 1) / 2) + minutes.get(n / 2)) / 2;
        return new Answer(kind, spells.size(), inTime, late, median, n == 0 ? Double.NaN : minutes.get(n - 1));
    }
}
