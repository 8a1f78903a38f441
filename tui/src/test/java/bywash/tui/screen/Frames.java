package bywash.tui.screen;

import static bywash.tui.screen.FrameParts.BED;
import static bywash.tui.screen.FrameParts.PROBES;
import static bywash.tui.screen.FrameParts.RESERVE;
import static bywash.tui.screen.FrameParts.SUMP;
import static bywash.tui.screen.FrameParts.TANK;
import static bywash.tui.screen.FrameParts.alarm;
import static bywash.tui.screen.FrameParts.at;
import static bywash.tui.screen.FrameParts.clean;
import static bywash.tui.screen.FrameParts.frame;
import static bywash.tui.screen.FrameParts.good;
import static bywash.tui.screen.FrameParts.healthy;
import static bywash.tui.screen.FrameParts.log;
import static bywash.tui.screen.FrameParts.quietFlow;
import static bywash.tui.screen.FrameParts.reserve;
import static bywash.tui.screen.FrameParts.site;
import static bywash.tui.screen.FrameParts.still;
import static bywash.tui.screen.FrameParts.unprobed;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmView;
import bywash.rules.chlorine.Crossing;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.TopUp;
import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.ProbeStatus.Health;
import bywash.rules.engine.Snapshot;
import bywash.rules.engine.VesselStatus;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Band;
import bywash.rules.site.Units;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.view.Playback;
import bywash.tui.view.TrendBuffer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Frames built by hand from an invented site, one for each situation that the screens must show well. */
final class Frames {
    static final Instant NOW = Instant.parse("2026-05-04T05:10:00Z");

    private Frames() {}

    static Frame quiet() {
        return frame(site(Units.METRIC), healthy(), still(), clean(), List.of(), null);
    }

    static Frame quietUs() {
        return frame(site(Units.US), healthy(), still(), clean(), List.of(), null);
    }

    /** A valve left open: chlorine rises, the sump overflows in 12 minutes. */
    static Frame valveOpen() {
        return valveOpen(Units.METRIC);
    }

    static Frame valveOpen(Units units) {
        Instant since = at(-8);
        FlowFinding inflow =
                new FlowFinding("sump", Verdict.UNPLANNED_INFLOW, 4.1, 0.3, 33, 3, since, "outside", at(12), null, "");
        List<VesselStatus> vessels =
                List.of(new VesselStatus(SUMP, 628.8, 603.6, 51.2, inflow), reserve(), unprobed(TANK), unprobed(BED));
        ResidualEstimate residual = new ResidualEstimate(
                7.4,
                12.6,
                18.9,
                0.12,
                at(6),
                List.of(
                        "Balance: 33 L came in, system holds 2140 L (1964 to 2251); by this alone the chance is 16 %",
                        "ORP: +18 mV, +2.1 sigma from its usual (weight 1/1.4, hardly tells)"),
                new Crossing(19, true, at(2), at(6), null),
                Crossing.none(11));
        List<AlarmView> alarms = List.of(
                alarm(
                        AlarmKind.UNPLANNED_INFLOW,
                        "sump",
                        AlarmState.UNACKNOWLEDGED,
                        since,
                        "Water nobody declared is entering sump from outside: 4.1 L/min, 33 L so far",
                        "Beyond noise and cycles: +4.1 +/- 0.6 L/min. No reserve falls: the water comes"
                                + " from outside and counts as mains water.",
                        at(12)),
                alarm(
                        AlarmKind.OVERFLOW_NEAR,
                        "sump",
                        AlarmState.UNACKNOWLEDGED,
                        at(-2),
                        "sump has 51 mm of freeboard left; at this rate it overflows in 12 min",
                        "Level 629 mm, overflow at 680 mm.",
                        at(12)),
                alarm(
                        AlarmKind.CHLORINE_RISK,
                        "system",
                        AlarmState.ACKNOWLEDGED,
                        at(-5),
                        "Chlorine in the system: 13 ug/L likely (7 to 19); passes 19 ug/L in 6 min",
                        "33 L of mains water at 0.9 mg/L in 2333 L. An estimate is no test.",
                        at(6)));
        return frame(site(units), healthy(), vessels, residual, alarms, null);
    }

    /** The same, the inflow acknowledged and seen again a minute ago, while a probe hangs for reasons of its own. */
    static Frame twoIncidents() {
        Frame f = valveOpen();
        List<AlarmView> alarms = new ArrayList<>(f.snapshot().alarms());
        AlarmView inflow = alarms.remove(0);
        alarms.add(alarm(
                AlarmKind.UNPLANNED_INFLOW,
                "sump",
                AlarmState.ACKNOWLEDGED,
                at(-1),
                inflow.message(),
                inflow.why(),
                at(12)));
        alarms.add(
                1,
                alarm(
                        AlarmKind.PROBE_STUCK,
                        "fish-orp",
                        AlarmState.UNACKNOWLEDGED,
                        at(-30),
                        "fish-orp has shown the very same value for 60 min",
                        "Its noise of before is gone.",
                        null));
        Snapshot s = f.snapshot();
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), alarms, null);
    }

    /** The same valve, while two probes are silent by design and an alarm is shelved. */
    static Frame someSetAside() {
        Snapshot s = valveOpen().snapshot();
        List<AlarmView> alarms = new ArrayList<>(s.alarms());
        alarms.add(alarm(AlarmKind.PROBE_SILENT, "fish-ph", AlarmState.SUPPRESSED, at(-9), "Silent", "", null));
        alarms.add(alarm(AlarmKind.PROBE_SILENT, "fish-do", AlarmState.SUPPRESSED, at(-9), "Silent", "", null));
        alarms.add(alarm(AlarmKind.ORP_LOW, "fish-tank", AlarmState.SHELVED, at(-9), "Low", "", null));
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), alarms, null);
    }

    /** The valve is open and this is what is reckoned of the chlorine. */
    static Frame valveOpen(ResidualEstimate residual) {
        Snapshot s = valveOpen().snapshot();
        return frame(s.site(), s.probes(), s.vessels(), residual, s.alarms(), null);
    }

    /** A top-up was ended a minute ago; whether its line is shut is not known yet. */
    static Frame topUpChecked() {
        TopUp topUp = new TopUp("sump", "reserve", 160, Duration.ofMinutes(40), at(-41), at(-1), 158, 1.6, "", "");
        FlowFinding in = new FlowFinding("sump", Verdict.PLANNED, 0, 0.3, 0, 1.6, at(-1), "reserve", null, null, "");
        List<VesselStatus> vessels =
                List.of(new VesselStatus(SUMP, 580, 556, 101, in), reserve(), unprobed(TANK), unprobed(BED));
        return frame(site(Units.METRIC), healthy(), vessels, clean(), List.of(), topUp);
    }

    /** The level of the sump cannot be believed; what was found before was nothing. */
    static Frame levelNotCredible() {
        Snapshot s = quiet().snapshot();
        List<VesselStatus> vessels = new ArrayList<>(s.vessels());
        vessels.set(0, new VesselStatus(SUMP, Double.NaN, Double.NaN, Double.NaN, quietFlow("sump")));
        return frame(s.site(), s.probes(), vessels, s.residual(), List.of(), null);
    }

    /** Siphons have lifted the sump to its overflow, and let it fall again. */
    static Frame betweenTwoSpills() {
        Snapshot s = valveOpen().snapshot();
        FlowFinding inflow =
                new FlowFinding("sump", Verdict.UNPLANNED_INFLOW, 4.1, 0.3, 90, 3, at(-22), "outside", NOW, null, "");
        List<VesselStatus> vessels = new ArrayList<>(s.vessels());
        vessels.set(0, new VesselStatus(SUMP, 636, 611, 44, inflow));
        return frame(s.site(), s.probes(), vessels, s.residual(), s.alarms(), null);
    }

    /** Quiet again for four minutes, but the alarm of a full sump waits whether that lasts. */
    static Frame eased() {
        Snapshot s = quiet().snapshot();
        AlarmView full = alarm(
                AlarmKind.OVERFLOW_NEAR,
                "sump",
                AlarmState.UNACKNOWLEDGED,
                at(-6),
                "sump has 12 mm of freeboard left",
                "Level 668 mm, overflow at 680 mm.",
                null);
        AlarmView eased = new AlarmView(
                full.kind(),
                full.subject(),
                full.state(),
                full.priority(),
                full.incident(),
                full.since(),
                full.message(),
                full.why(),
                full.consequence(),
                full.action(),
                null,
                full.values(),
                at(-4));
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), List.of(eased), null);
    }

    /** The feed was lost and is back; nobody has acknowledged it. */
    static Frame feedBack() {
        Snapshot s = quiet().snapshot();
        AlarmView over = alarm(
                AlarmKind.FEED_LOST,
                "feed",
                AlarmState.RETURNED_UNACKNOWLEDGED,
                at(-5),
                "Back to normal: The feed is lost: connection refused",
                "No readings reach the watch.",
                null);
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), List.of(over), null);
    }

    /** The same as quiet, but oxygen is low, and this is the alarm. */
    static Frame oxygenAlarm() {
        Snapshot s = quiet().snapshot();
        AlarmView low =
                alarm(AlarmKind.LOW_OXYGEN, "fish-tank", AlarmState.UNACKNOWLEDGED, at(-5), "Oxygen is low", "", null);
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), List.of(low), null);
    }

    /** Alarms that stand as here, each with this deadline. */
    static Frame withDeadlines(Instant inflow, Instant overflowNear) {
        Frame f = valveOpen();
        Snapshot s = f.snapshot();
        List<AlarmView> alarms = new ArrayList<>();
        for (AlarmView a : s.alarms()) {
            Instant deadline = a.kind() == AlarmKind.UNPLANNED_INFLOW
                    ? inflow
                    : a.kind() == AlarmKind.OVERFLOW_NEAR ? overflowNear : null;
            alarms.add(alarm(a.kind(), a.subject(), a.state(), a.since(), a.message(), a.why(), deadline));
        }
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), alarms, null);
    }

    /** The valve was shut: the sump is still full, the chlorine is in. */
    static Frame inflowOver() {
        Snapshot s = withDeadlines(NOW, NOW).snapshot();
        List<AlarmView> alarms = s.alarms().stream()
                .filter(a -> a.kind() == AlarmKind.OVERFLOW_NEAR || a.kind() == AlarmKind.CHLORINE_RISK)
                .map(a -> alarm(a.kind(), a.subject(), a.state(), a.since(), a.message(), a.why(), null))
                .toList();
        return frame(s.site(), s.probes(), s.vessels(), s.residual(), alarms, null);
    }

    /** Oxygen is under its band, the alarm still waits out its on-delay. */
    static Frame oxygenLowNoAlarmYet() {
        List<ProbeStatus> probes = new ArrayList<>(healthy());
        probes.set(1, good(1, 4.62, new Band(5, Double.POSITIVE_INFINITY)));
        return frame(site(Units.METRIC), probes, still(), clean(), List.of(), null);
    }

    static Frame feedLost() {
        SnapshotDraft lost = new SnapshotDraft(quiet().snapshot());
        lost.feedUp = false;
        lost.feedDetail = "connection refused; next try in 8 s";
        return new Frame(lost.done(), trends(), log(List.of()), NOW, Losses.NONE, Set.of(), "");
    }

    static Frame losing() {
        Frame f = quiet();
        return new Frame(f.snapshot(), f.trends(), f.log(), NOW, new Losses(0, 2, 3), Set.of(), "");
    }

    /** The same, while much else is to be said. */
    static Frame losingWithMuchToSay() {
        Frame f = quiet();
        String words = "disk full, make room, clock set back: times run 3600 s ahead, nobody watched 04:10 to 05:20";
        return new Frame(f.snapshot(), f.trends(), f.log(), NOW, new Losses(1204, 20, 3), Set.of(), words);
    }

    /** Just started: nothing has come in. */
    static Frame waiting() {
        List<ProbeStatus> probes = PROBES.stream()
                .map(p -> new ProbeStatus(p, Double.NaN, null, Health.WAITING, null, Double.NaN))
                .toList();
        FlowFinding learning =
                new FlowFinding("sump", Verdict.LEARNING, Double.NaN, 0, 0, 0, null, "unknown", null, null, "");
        List<VesselStatus> vessels = List.of(
                new VesselStatus(SUMP, Double.NaN, Double.NaN, Double.NaN, learning),
                new VesselStatus(RESERVE, Double.NaN, Double.NaN, Double.NaN, null),
                unprobed(TANK),
                unprobed(BED));
        return frame(site(Units.METRIC), probes, vessels, clean(), List.of(), null);
    }

    static Frame probeSilent() {
        List<ProbeStatus> probes = new ArrayList<>(healthy());
        probes.set(
                1,
                new ProbeStatus(
                        PROBES.get(1), 6.9, at(-11), Health.SILENT, new Band(5, Double.POSITIVE_INFINITY), Double.NaN));
        List<AlarmView> alarms = List.of(alarm(
                AlarmKind.PROBE_SILENT,
                "fish-do",
                AlarmState.ACKNOWLEDGED,
                at(-9),
                "No reading from fish-do (dissolved-oxygen in fish-tank) for 11 min",
                "A reading is due every 30 s.",
                null));
        return frame(site(Units.METRIC), probes, still(), clean(), alarms, null);
    }

    static Frame topUpRunning() {
        TopUp topUp = new TopUp("sump", "reserve", 160, Duration.ofMinutes(40), at(-20), null, 81, 1.6, "", "");
        FlowFinding in = new FlowFinding("sump", Verdict.PLANNED, 4, 0.3, 81, 1.6, at(-20), "reserve", null, null, "");
        FlowFinding out = new FlowFinding("reserve", Verdict.PLANNED, -4, 0.3, -81, 1.6, at(-20), "", null, null, "");
        List<VesselStatus> vessels = List.of(
                new VesselStatus(SUMP, 420, 403.2, 260, in),
                new VesselStatus(RESERVE, 700, 665, 400, out),
                unprobed(TANK),
                unprobed(BED));
        return frame(site(Units.METRIC), healthy(), vessels, clean(), List.of(), topUp);
    }

    /** The same was never ended: 52 L more than declared have come, and the sump is nearly full. */
    static Frame topUpRanOver() {
        TopUp topUp = new TopUp("sump", "reserve", 160, Duration.ofMinutes(40), at(-53), null, 212, 3, "", "");
        String why = "Declared: 160 L. Came in: 212 L (206 to 218 L), 52 L (46 to 58 L) of them more than declared.";
        FlowFinding in = new FlowFinding(
                "sump", Verdict.LINE_NOT_SHUT, 4, 0.3, 212, 3, 160, at(-53), null, "reserve", null, at(18), null, why);
        FlowFinding out = new FlowFinding("reserve", Verdict.PLANNED, -4, 0.3, -212, 3, at(-53), "", null, null, "");
        List<VesselStatus> vessels = List.of(
                new VesselStatus(SUMP, 604, 580, 76, in),
                new VesselStatus(RESERVE, 565, 537, 535, out),
                unprobed(TANK),
                unprobed(BED));
        List<AlarmView> alarms = List.of(alarm(
                AlarmKind.LINE_NOT_SHUT,
                "sump",
                AlarmState.UNACKNOWLEDGED,
                at(-8),
                "The line into sump is not shut: 4.0 L/min, 52 L (46 to 58 L) beyond the 160 L declared",
                why,
                at(18)));
        return frame(site(Units.METRIC), healthy(), vessels, clean(), alarms, topUp);
    }

    /** {@link #quiet} five seconds on: every age has grown, one value has moved. */
    static Frame oneTickLater() {
        Snapshot s = quiet().snapshot();
        List<ProbeStatus> probes = new ArrayList<>(s.probes());
        probes.set(0, good(0, 6.93, new Band(6.2, 7.4)));
        SnapshotDraft later = new SnapshotDraft(s);
        later.at = NOW.plusSeconds(5);
        later.probes = probes;
        return new Frame(later.done(), trends(), log(List.of()), NOW.plusSeconds(5), Losses.NONE, Set.of(), "");
    }

    /** A recording of two hours, paused at its middle. */
    static Frame replay() {
        Playback playback = new Playback(Playback.State.PAUSED, 60, at(-60), NOW, at(60));
        Frame f = valveOpen();
        return new Frame(f.snapshot(), f.trends(), f.log(), NOW, Losses.NONE, Set.of(), playback.words(), playback);
    }

    static Frame topUpShut() {
        TopUp topUp = new TopUp(
                "sump",
                "reserve",
                160,
                Duration.ofMinutes(40),
                at(-46),
                at(-6),
                158,
                1.6,
                "Line shut: 0.0 +/- 0.3 L/min over 5 min",
                "158 L (155 to 161 L) came in");
        return frame(site(Units.METRIC), healthy(), still(), clean(), List.of(), topUp);
    }

    /** Tests of days past are on record. */
    static Frame tested() {
        Frame frame = quiet();
        List<OperatorEntry.WaterTest> tests = List.of(
                new OperatorEntry.WaterTest(at(-20 * 1440), "fish-tank", "alkalinity", 80),
                new OperatorEntry.WaterTest(at(-4 * 1440), "fish-tank", "nitrite", 0.25),
                new OperatorEntry.WaterTest(at(-420), "reserve", "total-chlorine", 0));
        SnapshotDraft tested = new SnapshotDraft(frame.snapshot());
        tested.tests = tests;
        return new Frame(tested.done(), frame.trends(), frame.log(), NOW, Losses.NONE, Set.of(), "");
    }

    /** The fish tank was tested for chlorine, and later the reserve, which says nothing of the loop. */
    static Frame chlorineTested() {
        Frame frame = valveOpen();
        SnapshotDraft tested = new SnapshotDraft(frame.snapshot());
        tested.tests = List.of(
                new OperatorEntry.WaterTest(at(-20), "fish-tank", "total-chlorine", 0.05),
                new OperatorEntry.WaterTest(at(-10), "reserve", "total-chlorine", 0));
        return new Frame(tested.done(), frame.trends(), frame.log(), NOW, Losses.NONE, Set.of(), "");
    }

    /** Texts from outside that try to steer the terminal. */
    static Frame hostile() {
        List<AlarmView> alarms = List.of(alarm(
                AlarmKind.FEED_LOST,
                "feed\u001b[2J",
                AlarmState.UNACKNOWLEDGED,
                at(-1),
                "lost\u001b]0;x\u0007 \u009b31m \u202e \ud83d\udc1f \r\n end",
                "\u001b[31m",
                null));
        return frame(site(Units.METRIC), healthy(), still(), clean(), alarms, null);
    }

    static TrendBuffer trends() {
        TrendBuffer trends = new TrendBuffer(2000);
        for (int minute = -30; minute <= 0; minute++) {
            trends.add("fish-ph", at(minute), 6.8 + 0.004 * (minute + 30));
            trends.add("fish-do", at(minute), 7.4 - 0.02 * (minute + 30));
            trends.add("fish-temp", at(minute), 18.4);
            trends.add("fish-orp", at(minute), 305 + 20 * Math.sin(minute / 4.0));
        }
        for (int minute = -24 * 60; minute <= 0; minute++) {
            trends.add("sump-level", at(minute), 400 + 40 * Math.sin(minute / 7.0));
            trends.add("reserve-level", at(minute), 880 - 0.01 * (minute + 24 * 60));
        }
        return trends;
    }
}
