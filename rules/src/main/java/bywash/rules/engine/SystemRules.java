package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.Condition;
import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.OrpFinding;
import bywash.rules.chlorine.ReserveBatch;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.chlorine.ResidualTracker;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.TopUp;
import bywash.rules.detect.WaterBalance;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.site.Device;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Figures;
import bywash.rules.text.Spans;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Alarms that need the whole system: chlorine risk, unsafe release, pump, feed. */
final class SystemRules {
    /** The subject of alarms about all the water. */
    static final String SYSTEM = "system";

    /** The subject of the alarm about the feed. */
    static final String FEED = "feed";

    private static final String STOPPED = " has stopped; pipes drain back";
    /** Of a pump that no probe tells of: a slow inflow begins in the same way. */
    private static final String SEEMS_STOPPED = " seems to have stopped; if it runs, water comes in";

    private static final Duration ACT_WITHIN = Duration.ofMinutes(30);
    private static final double LIKELY_ENOUGH = 0.5;

    private final AlarmBoard board;
    private final WaterBalance balance;
    private final ResidualTracker residual;
    private final List<Vessel> reserves;
    private boolean incident;
    private SpeciesLimits limits = SpeciesLimits.GENERAL;

    SystemRules(Site site, AlarmBoard board, WaterBalance balance, ResidualTracker residual) {
        this.board = board;
        this.balance = balance;
        this.residual = residual;
        this.reserves = site.vessels(VesselRole.RESERVE);
    }

    /** What the chlorine is held against from here on. */
    void limits(SpeciesLimits newLimits) {
        limits = newLimits;
    }

    /** Whether water moves that should not; baselines are held meanwhile. */
    boolean incident() {
        return incident;
    }

    void tick(
            Instant at,
            Map<String, FlowFinding> findings,
            Collection<ProbeMonitor> monitors,
            boolean feedUp,
            String feedDetail) {
        chlorine(at, findings);
        orpRise(at);
        for (Vessel reserve : reserves) {
            release(reserve, findings.get(reserve.id()), at);
        }
        pump(at, findings, monitors);
        board.set(
                AlarmKind.FEED_LOST,
                FEED,
                at,
                feedUp ? null : Condition.of("The feed is lost: " + feedDetail, "No readings reach the watch.", null));
    }

    private void chlorine(Instant at, Map<String, FlowFinding> findings) {
        boolean unplanned = false;
        for (Map.Entry<String, FlowFinding> finding : findings.entrySet()) {
            Verdict verdict = finding.getValue().verdict();
            boolean runsIn = verdict == Verdict.UNPLANNED_INFLOW || verdict == Verdict.LINE_NOT_SHUT;
            unplanned |= runsIn && residual.batch(finding.getKey()) == null;
        }
        ResidualEstimate e = residual.estimate();
        Instant acuteAt = e.acuteAt();
        boolean soon = unplanned && acuteAt != null && acuteAt.isBefore(at.plus(ACT_WITHIN));
        boolean passed = e.probability() >= LIKELY_ENOUGH && e.highUgL() > limits.acuteUgL();
        incident = unplanned || passed || residual.climbing();
        Condition condition = null;
        if (soon || passed) {
            String range = Figures.of(e.likelyUgL(), 0) + " ug/L likely (" + Figures.of(e.lowUgL(), 0) + " to "
                    + Figures.of(e.highUgL(), 0) + ")";
            condition = risk("Chlorine in the system: " + range + passes(e, at), e);
        } else if (residual.climbing()) {
            condition = risk("Chlorine may be entering: oxidation potential climbs, the level shows no inflow yet", e);
        }
        board.set(AlarmKind.CHLORINE_RISK, SYSTEM, at, condition);
    }

    /** What lies ahead of it; nothing of a limit that it is over already. */
    private String passes(ResidualEstimate e, Instant at) {
        Instant acuteAt = e.acuteAt();
        if (acuteAt == null || e.likelyUgL() > limits.acuteUgL()) {
            return "";
        }
        Instant chronicAt = e.chronic().rising() ? e.chronic().likely() : null;
        boolean below = e.likelyUgL() <= limits.chronicUgL();
        String chronic = below && chronicAt != null && chronicAt.isAfter(at)
                ? " " + Figures.of(limits.chronicUgL(), 0) + " ug/L " + Spans.ahead(at, chronicAt) + ","
                : "";
        return (e.doubted() ? "; by the balance alone it passes" : "; passes") + chronic + " "
                + Figures.of(limits.acuteUgL(), 0) + " ug/L " + Spans.ahead(at, acuteAt);
    }

    private Condition risk(String message, ResidualEstimate e) {
        return Condition.of(
                message,
                String.join(". ", e.evidence()) + ". Held against " + limits.chlorineWords()
                        + ". An estimate is no test.",
                e.acuteAt(),
                "low_ug_l",
                Text.round(e.lowUgL(), 1),
                "likely_ug_l",
                Text.round(e.likelyUgL(), 1),
                "high_ug_l",
                Text.round(e.highUgL(), 1),
                "probability",
                Text.round(e.probability(), 2),
                "acute_at",
                Objects.toString(e.acuteAt(), ""));
    }

    private void orpRise(Instant at) {
        OrpFinding finding = residual.orpFinding(at);
        board.set(
                AlarmKind.ORP_RISE,
                SYSTEM,
                at,
                finding == null
                        ? null
                        : Condition.of(
                                "Oxidation potential is " + Figures.of(finding.riseMv(), 0)
                                        + " mV above its usual with no inflow seen",
                                finding.why(),
                                null,
                                "rise_mv",
                                Text.round(finding.riseMv(), 0),
                                "sigmas",
                                Text.round(finding.sigmas(), 1),
                                "since",
                                Objects.toString(finding.since(), "")));
    }

    private void release(Vessel reserve, @Nullable FlowFinding finding, Instant at) {
        ReserveBatch batch = residual.batch(reserve.id());
        if (batch == null) {
            return;
        }
        TopUp topUp = balance.topUp();
        boolean declared =
                topUp != null && topUp.endedAt() == null && topUp.source().equals(reserve.id());
        boolean leaving = declared || (finding != null && finding.verdict() == Verdict.UNPLANNED_LOSS);
        Condition condition = null;
        if (leaving && !batch.knownSafe()) {
            BatchView view = batch.view(at);
            boolean runs = finding != null && finding.rateLMin() < 0;
            condition = Condition.of(
                    "Water of " + reserve.id() + (runs ? " is leaving" : " is declared to run in")
                            + " and is not known to be safe",
                    "The batch: " + view.words() + ".",
                    null,
                    "residual_low_mg_l",
                    Text.round(view.residual().lowMgL(), 2),
                    "residual_high_mg_l",
                    Text.round(view.residual().highMgL(), 2));
        }
        board.set(AlarmKind.UNSAFE_RELEASE, reserve.id(), at, condition);
    }

    private void pump(Instant at, Map<String, FlowFinding> findings, Collection<ProbeMonitor> monitors) {
        boolean probed = false;
        for (ProbeMonitor monitor : monitors) {
            if (monitor.probe().quantity() == Quantity.STATE && monitor.probe().device() == Device.PUMP) {
                probed = true;
                boolean off = monitor.at() != null && monitor.value() < 0.5;
                boolean heard = switch (monitor.health(at)) {
                    case GOOD, STUCK -> true;
                    case WAITING, SILENT, IMPLAUSIBLE -> false;
                };
                if (off || heard) {
                    String vessel = monitor.probe().vessel();
                    set(vessel, at, off, "The pump of " + vessel + STOPPED, "The pump's own state says off.");
                } else {
                    board.unknown(AlarmKind.PUMP_STOPPED, monitor.probe().vessel());
                }
            }
        }
        if (!probed) {
            for (Map.Entry<String, FlowFinding> entry : findings.entrySet()) {
                boolean drains = entry.getValue().verdict() == Verdict.DRAIN_DOWN;
                String seems = "The pump of " + entry.getKey() + SEEMS_STOPPED;
                set(entry.getKey(), at, drains, seems, entry.getValue().why());
            }
        }
    }

    private void set(String vessel, Instant at, boolean stopped, String message, String why) {
        board.set(AlarmKind.PUMP_STOPPED, vessel, at, stopped ? Condition.of(message, why, null) : null);
    }
}
