package bywash.rules.response;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.chlorine.ResidualEstimate;
import java.time.Instant;
import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * One incident in a few figures.
 *
 * @param ended null while it stands
 * @param alarms that it raised, each of one vessel, probe or the system
 * @param unplannedL litres in, less litres out
 * @param peakLikelyUgL highest likely residual of the system
 * @param peakHighUgL its high end
 */
public record IncidentSummary(
        String id,
        Instant began,
        @Nullable Instant ended,
        Set<Raised> alarms,
        double unplannedL,
        double peakLikelyUgL,
        double peakHighUgL) {
    public IncidentSummary {
        alarms = Collections.unmodifiableSet(new TreeSet<>(alarms));
    }

    /** One alarm of one subject. */
    public record Raised(AlarmKind kind, String subject) implements Comparable<Raised> {
        @Override
        public int compareTo(Raised other) {
            int byKind = kind.compareTo(other.kind);
            return byKind != 0 ? byKind : subject.compareTo(other.subject);
        }
    }

    /** Whether it may have hurt fish or bacteria: chlorine or another oxidant was or may have been in the water. */
    public boolean oxidant() {
        return peakHighUgL > ResidualEstimate.CHRONIC_UG_L
                || alarms.stream().anyMatch(a -> a.kind() == AlarmKind.CHLORINE_RISK || a.kind() == AlarmKind.ORP_RISE);
    }
}
