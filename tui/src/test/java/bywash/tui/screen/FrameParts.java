package bywash.tui.screen;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.AlarmView;
import bywash.rules.alarm.Guidance;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.TopUp;
import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.ProbeStatus.Health;
import bywash.rules.engine.VesselStatus;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Band;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.Box;
import bywash.rules.vessel.VerticalCylinder;
import bywash.tui.view.EventLog;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The invented site of {@link Frames}, and the parts that its situations are put together from. */
final class FrameParts {
    static final Vessel SUMP = new Vessel("sump", VesselRole.SUMP, new Box(1200, 800, 750), 652.8, 680, null);
    static final Vessel RESERVE =
            new Vessel("reserve", VesselRole.RESERVE, new VerticalCylinder(1100, 1200), 1045, 1100, "sump");
    static final Vessel TANK = new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null);
    static final Vessel BED = new Vessel("bed-1", VesselRole.GROW_BED, null, 180, Double.NaN, null);
    static final List<Probe> PROBES = List.of(
            probe("fish-ph", "fish-tank", Quantity.PH),
            probe("fish-do", "fish-tank", Quantity.DISSOLVED_OXYGEN),
            probe("fish-temp", "fish-tank", Quantity.TEMPERATURE),
            probe("fish-orp", "fish-tank", Quantity.ORP),
            probe("sump-level", "sump", Quantity.LEVEL),
            probe("reserve-level", "reserve", Quantity.LEVEL));

    private FrameParts() {}

    static Frame frame(
            Site site,
            List<ProbeStatus> probes,
            List<VesselStatus> vessels,
            ResidualEstimate residual,
            List<AlarmView> alarms,
            @Nullable TopUp topUp) {
        SnapshotDraft draft = new SnapshotDraft(site, probes, vessels, residual, alarms);
        draft.at = Frames.NOW;
        draft.topUp = topUp;
        return new Frame(draft.done(), Frames.trends(), log(alarms), Frames.NOW, Losses.NONE, Set.of(), "");
    }

    /** The alarms that stand as they were raised, and a few entries of the day. */
    static EventLog log(List<AlarmView> alarms) {
        EventLog log = new EventLog();
        log.entry(new OperatorEntry.Feed(at(-600), 180, 0.42));
        log.entry(new OperatorEntry.WaterTest(at(-420), "reserve", "total-chlorine", 0));
        log.entry(new OperatorEntry.Note(at(-90), "bed-1 pruned, two dead leaves in the sump"));
        alarms.stream()
                .sorted(Comparator.comparing(AlarmView::since))
                .map(a -> new AlarmTransition(
                        a.since(),
                        a.kind(),
                        a.subject(),
                        AlarmState.UNACKNOWLEDGED,
                        a.priority(),
                        a.incident(),
                        a.message(),
                        Map.of()))
                .forEach(log::alarm);
        return log;
    }

    static Site site(Units units) {
        return new Site(
                "Larkfield glasshouse",
                "larkfield",
                ZoneId.of("Europe/Dublin"),
                85,
                Stocking.FISH,
                units,
                new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11),
                List.of(SUMP, RESERVE, TANK, BED),
                PROBES,
                List.of());
    }

    static List<ProbeStatus> healthy() {
        return List.of(
                good(0, 6.92, new Band(6.2, 7.4)),
                good(1, 6.84, new Band(5, Double.POSITIVE_INFINITY)),
                good(2, 18.4, new Band(12, 30)),
                good(3, 311, null),
                good(4, 412, null),
                good(5, 860, null));
    }

    static ProbeStatus good(int probe, double value, @Nullable Band band) {
        return new ProbeStatus(PROBES.get(probe), value, Frames.NOW.minusSeconds(5), Health.GOOD, band, 0);
    }

    static List<VesselStatus> still() {
        return List.of(
                new VesselStatus(SUMP, 412, 395.5, 268, quietFlow("sump")), reserve(), unprobed(TANK), unprobed(BED));
    }

    static VesselStatus reserve() {
        return new VesselStatus(RESERVE, 860, 817, 240, quietFlow("reserve"));
    }

    static VesselStatus unprobed(Vessel vessel) {
        return new VesselStatus(vessel, Double.NaN, Double.NaN, Double.NaN, null);
    }

    static FlowFinding quietFlow(String vessel) {
        return new FlowFinding(vessel, Verdict.QUIET, 0, 0.1, 0, 0, null, "unknown", null, null, "");
    }

    static ResidualEstimate clean() {
        return new ResidualEstimate(0, 0.1, 0.4, 0, null, List.of("no mains water in the last 3 days"));
    }

    static AlarmView alarm(
            AlarmKind kind,
            String subject,
            AlarmState state,
            Instant since,
            String message,
            String why,
            @Nullable Instant deadline) {
        Guidance guidance = Guidance.of(kind);
        return new AlarmView(
                kind,
                subject,
                state,
                kind.priority(),
                kind == AlarmKind.UNPLANNED_INFLOW || kind == AlarmKind.OVERFLOW_NEAR || kind == AlarmKind.CHLORINE_RISK
                        ? "20260504T050200Z-unplanned-inflow-sump"
                        : "20260504T050000Z-" + kind.word() + "-" + subject,
                since,
                message,
                why,
                guidance.consequence(),
                guidance.action(),
                deadline,
                Map.of(),
                null);
    }

    static Instant at(int minutes) {
        return Frames.NOW.plus(Duration.ofMinutes(minutes));
    }

    static Probe probe(String id, String vessel, Quantity quantity) {
        return new Probe(id, vessel, quantity, null, Duration.ofSeconds(60));
    }
}
