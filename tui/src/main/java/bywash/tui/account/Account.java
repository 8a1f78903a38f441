package bywash.tui.account;

import bywash.rules.alarm.AlarmSpell;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.rules.prevention.Suggestion;
import bywash.rules.response.ResponseSheet;
import bywash.rules.site.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * All that is known of a span of time.
 *
 * @param history alarm changes up to its end, oldest first
 * @param spells alarms that stood at some time of it
 * @param flows water that moved
 * @param readings of each probe, by its id
 * @param gaps when nothing could be seen
 * @param reckonedFrom from when on readings are kept, and so water and residual could be worked out; null where none are
 */
public record Account(
        Site site,
        Instant from,
        Instant to,
        List<AlarmTransition> history,
        List<AlarmSpell> spells,
        List<OperatorEntry> entries,
        List<FlowRun> flows,
        List<ResidualPoint> residual,
        Map<String, List<Slice>> readings,
        List<Gap> gaps,
        Care care,
        @Nullable Instant reckonedFrom) {

    /** What was known at the end of what to do and what to change. */
    public record Care(List<ResponseSheet> sheets, List<Suggestion> suggestions) {}

    /** Alarm changes in the span, oldest first. */
    public List<AlarmTransition> transitions() {
        return history.stream().filter(t -> !t.at().isBefore(from)).toList();
    }

    public Duration span() {
        return Duration.between(from, to);
    }

    /** The point of the highest likely residual; null where none is above nothing. */
    public @Nullable ResidualPoint peak() {
        ResidualPoint peak = null;
        for (ResidualPoint p : residual) {
            if (p.likelyUgL() > 0 && (peak == null || p.likelyUgL() > peak.likelyUgL())) {
                peak = p;
            }
        }
        return peak;
    }

    /** The estimate that stood at a time: the last before it; null where there is none within five minutes. */
    public @Nullable ResidualPoint residualAt(Instant at) {
        ResidualPoint last = null;
        for (ResidualPoint p : residual) {
            if (p.at().isAfter(at)) {
                break;
            }
            last = p;
        }
        return last != null && Duration.between(last.at(), at).toMinutes() < 5 ? last : null;
    }
}
