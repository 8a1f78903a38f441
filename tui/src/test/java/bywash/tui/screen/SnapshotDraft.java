package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.BalanceLine;
import bywash.rules.detect.TopUp;
import bywash.rules.engine.CareStatus;
import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.Snapshot;
import bywash.rules.engine.VesselStatus;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A snapshot of a test, to be changed here and there. */
final class SnapshotDraft {
    private final Site site;
    private final ResidualEstimate residual;
    private final List<AlarmView> alarms;

    @Nullable
    Instant at;

    Stocking stocking = Stocking.FISH;
    List<ProbeStatus> probes;
    List<VesselStatus> vessels;

    @Nullable
    TopUp topUp;

    boolean feedUp = true;
    String feedDetail = "";
    CareStatus care = CareStatus.NONE;

    @Nullable
    SeasonStatus season;

    List<WaterTest> tests = List.of();
    List<BalanceLine> balance = List.of();

    /** With fish, the feed up, and nothing on record. */
    SnapshotDraft(
            Site site,
            List<ProbeStatus> probes,
            List<VesselStatus> vessels,
            ResidualEstimate residual,
            List<AlarmView> alarms) {
        this.site = site;
        this.probes = probes;
        this.vessels = vessels;
        this.residual = residual;
        this.alarms = alarms;
    }

    /** Like another. */
    SnapshotDraft(Snapshot s) {
        this(s.site(), s.probes(), s.vessels(), s.residual(), s.alarms());
        at = s.at();
        stocking = s.stocking();
        topUp = s.topUp();
        feedUp = s.feedUp();
        feedDetail = s.feedDetail();
        care = s.care();
        season = s.season();
        tests = s.tests();
        balance = s.balance();
    }

    Snapshot done() {
        return new Snapshot(
                site,
                at,
                stocking,
                probes,
                vessels,
                residual,
                alarms,
                topUp,
                feedUp,
                feedDetail,
                care,
                season,
                tests,
                balance);
    }
}
