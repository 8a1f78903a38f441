package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.site.Device;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Which alarms are quiet by design: those of a probe that somebody cleans, of a pump that somebody has switched off, and the
 * silence of every probe while the feed itself is lost, which has its own alarm.
 */
final class Suppression {
    /** Nothing stays quiet for longer, whatever was entered: who forgets the end must not lose the alarm. */
    private static final Duration LONGEST = Duration.ofHours(24);

    private static final List<AlarmKind> OF_PROBE =
            List.of(AlarmKind.PROBE_SILENT, AlarmKind.PROBE_STUCK, AlarmKind.PROBE_IMPLAUSIBLE);

    private final Site site;
    private final AlarmBoard board;
    private final Map<String, Instant> careUntil = new TreeMap<>();
    private final Duration longestSilence;
    private @Nullable Instant feedLostAt;
    private boolean someQuiet;

    Suppression(Site site, AlarmBoard board) {
        this.site = site;
        this.board = board;
        this.longestSilence = site.probes().stream()
                .map(Probe::silence)
                .max(Duration::compareTo)
                .orElse(Duration.ZERO);
    }

    void started(MaintenanceStart entry) {
        Duration duration = entry.duration().compareTo(LONGEST) > 0 ? LONGEST : entry.duration();
        careUntil.put(entry.subject(), entry.at().plus(duration));
    }

    void ended(MaintenanceEnd entry) {
        careUntil.remove(entry.subject());
    }

    /** Whether somebody is at the probe, or at the pump of the vessel, of this id. */
    boolean inCare(String subject, Instant at) {
        Instant until = careUntil.isEmpty() ? null : careUntil.get(subject);
        return until != null && at.isBefore(until);
    }

    void tick(Instant at) {
        if (board.active(AlarmKind.FEED_LOST, SystemRules.FEED)) {
            feedLostAt = at;
        }
        boolean some = !careUntil.isEmpty() || (feedLostAt != null && !at.isAfter(feedLostAt.plus(longestSilence)));
        if (some || someQuiet) {
            mark(at);
        }
        someQuiet = some;
    }

    private void mark(Instant at) {
        for (Probe probe : site.probes()) {
            boolean care = inCare(probe.id(), at);
            for (AlarmKind kind : OF_PROBE) {
                board.suppress(kind, probe.id(), care || (kind == AlarmKind.PROBE_SILENT && feedLost(probe, at)));
            }
            for (AlarmKind kind : read(probe.quantity())) {
                board.suppress(kind, probe.vessel(), care);
            }
        }
        for (Vessel vessel : site.vessels()) {
            board.suppress(AlarmKind.PUMP_STOPPED, vessel.id(), pumpInCare(vessel.id(), at));
        }
    }

    private boolean pumpInCare(String vessel, Instant at) {
        return inCare(vessel, at)
                || site.probes().stream()
                        .filter(p -> p.device() == Device.PUMP && p.vessel().equals(vessel))
                        .anyMatch(p -> inCare(p.id(), at));
    }

    /** Once the feed is back each probe has its usual time to be heard again. */
    private boolean feedLost(Probe probe, Instant at) {
        return feedLostAt != null && at.isBefore(feedLostAt.plus(probe.silence()));
    }

    /** The alarms of a vessel that rest on a probe of this quantity alone. */
    private static List<AlarmKind> read(Quantity quantity) {
        return switch (quantity) {
            case LEVEL ->
                List.of(
                        AlarmKind.UNPLANNED_INFLOW,
                        AlarmKind.UNPLANNED_LOSS,
                        AlarmKind.OVERFLOW_NEAR,
                        AlarmKind.LINE_NOT_SHUT);
            case PH -> List.of(AlarmKind.PH_LOW, AlarmKind.PH_HIGH);
            case TEMPERATURE ->
                List.of(AlarmKind.TEMPERATURE_LOW, AlarmKind.TEMPERATURE_HIGH, AlarmKind.TEMPERATURE_SWING);
            case DISSOLVED_OXYGEN -> List.of(AlarmKind.LOW_OXYGEN);
            case ORP -> List.of(AlarmKind.ORP_LOW, AlarmKind.ORP_RISE);
            case CONDUCTIVITY, FLOW, STATE -> List.of();
        };
    }
}
