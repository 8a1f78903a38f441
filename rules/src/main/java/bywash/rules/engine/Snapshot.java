package bywash.rules.engine;

import bywash.rules.alarm.AlarmView;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.BalanceLine;
import bywash.rules.detect.TopUp;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.SystemVolume;
import bywash.rules.site.Vessel;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything a screen needs at one moment; immutable.
 *
 * @param at event time; null before the first event
 * @param alarms not normal, most urgent first
 * @param topUp the running top-up, or the last one ended; null when there was none
 * @param feedUp whether the feed is connected
 * @param care batches, response sheets, recovery, prevention
 * @param tests manual tests that count, in order of entry
 * @param season fish, feed, plants and probes on record; null before the first event
 * @param balance the hourly water balance of each vessel with a level probe and of all together
 */
public record Snapshot(
        Site site,
        @Nullable Instant at,
        Stocking stocking,
        List<ProbeStatus> probes,
        List<VesselStatus> vessels,
        ResidualEstimate residual,
        List<AlarmView> alarms,
        @Nullable TopUp topUp,
        boolean feedUp,
        String feedDetail,
        CareStatus care,
        @Nullable SeasonStatus season,
        List<WaterTest> tests,
        List<BalanceLine> balance) {
    public Snapshot {
        probes = List.copyOf(probes);
        vessels = List.copyOf(vessels);
        alarms = List.copyOf(alarms);
        tests = List.copyOf(tests);
        balance = List.copyOf(balance);
    }

    /** The recirculating water at the levels of this moment. */
    public SystemVolume systemVolume() {
        return SystemVolume.of(site, this::levelMm);
    }

    private double levelMm(Vessel vessel) {
        return vessels.stream()
                .filter(v -> v.vessel().id().equals(vessel.id()))
                .mapToDouble(VesselStatus::levelMm)
                .findFirst()
                .orElse(Double.NaN);
    }
}
