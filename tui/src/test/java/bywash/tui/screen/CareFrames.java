package bywash.tui.screen;

import bywash.rules.chlorine.ReserveBatch;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.chlorine.Treatment;
import bywash.rules.detect.FlowFinding;
import bywash.rules.engine.CareStatus;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.prevention.Suggestion;
import bywash.rules.recovery.RecentMeals;
import bywash.rules.recovery.Recovery;
import bywash.rules.recovery.RecoveryView;
import bywash.rules.recovery.WaterTests;
import bywash.rules.response.IncidentBook;
import bywash.rules.response.Readings;
import bywash.tui.view.Frame;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** Frames with batches, a response sheet, a recovery and suggestions, made by the rules themselves. */
final class CareFrames {
    private static final String INCIDENT = "20260504T050200Z-unplanned-inflow-sump";

    private CareFrames() {}

    /** A valve was open; three steps are done, the aerated batch waits. */
    static Frame valveOpen() {
        Frame frame = Frames.valveOpen();
        Snapshot s = frame.snapshot();
        ReserveBatch batch = new ReserveBatch("reserve", s.site().mains(), 1045);
        Instant filled = Frames.NOW.minus(Duration.ofHours(6));
        for (int i = 0; i < 10; i++) {
            batch.level(filled.plusSeconds(10L * i), 817);
        }
        batch.filled(filled, 700);
        batch.level(filled.plus(Duration.ofHours(3)), 817);
        batch.treated(filled.plus(Duration.ofHours(3)), Treatment.AERATED, Double.NaN);
        IncidentBook book = new IncidentBook(s.site());
        s.alarms()
                .forEach(a -> book.transition(new bywash.rules.alarm.AlarmTransition(
                        a.since(), a.kind(), a.subject(), a.state(), a.priority(), INCIDENT, a.message(), Map.of())));
        ResidualEstimate e = s.residual();
        FlowFinding in = s.vessels().get(0).flow();
        book.tick(new Readings(
                Frames.NOW,
                e,
                s.systemVolume(),
                in == null ? List.of() : List.of(in),
                List.of(batch.view(Frames.NOW)),
                List.of()));
        book.entry(new StepDone(Frames.NOW.minusSeconds(120), INCIDENT, "stop-water", ""));
        book.entry(new StepDone(Frames.NOW.minusSeconds(60), INCIDENT, "air", "second pump too"));
        Suggestion suggestion = new Suggestion(
                "Fit a second valve, or one that shuts by itself, in the line into sump",
                "2 times the same line was not shut after a top-up",
                List.of("20260410T090000Z-line-not-shut-sump", INCIDENT));
        return with(
                frame, new CareStatus(List.of(batch.view(Frames.NOW)), book.sheets(), recovery(), List.of(suggestion)));
    }

    private static RecoveryView recovery() {
        WaterTests tests = new WaterTests();
        RecentMeals feed = new RecentMeals();
        Recovery recovery = new Recovery(tests, feed);
        Instant began = Frames.NOW.minus(Duration.ofDays(2));
        recovery.begin(INCIDENT, began);
        feed.add(began.plus(Duration.ofHours(20)), 120, 0.38);
        tests.add("total-chlorine", began.plus(Duration.ofHours(2)), 0.06);
        tests.add("total-chlorine", began.plus(Duration.ofHours(14)), 0.0);
        tests.add("total-ammonia", began.plus(Duration.ofHours(4)), 0.3);
        tests.add("total-ammonia", began.plus(Duration.ofHours(28)), 0.9);
        tests.add("nitrite", began.plus(Duration.ofHours(28)), 0.2);
        recovery.tick(Frames.NOW, false);
        RecoveryView view = recovery.view(Frames.NOW, 2000);
        if (view == null) {
            throw new AssertionError("no recovery");
        }
        return view;
    }

    /** Two days on: the valve is shut, no alarm stands any more. */
    static Frame wayBack() {
        Frame frame = valveOpen();
        Snapshot s = frame.snapshot();
        SnapshotDraft over = new SnapshotDraft(s.site(), s.probes(), s.vessels(), s.residual(), List.of());
        over.at = Frames.NOW;
        over.care = s.care();
        return new Frame(
                over.done(), frame.trends(), frame.log(), frame.now(), frame.losses(), frame.safeSources(), "");
    }

    private static Frame with(Frame frame, CareStatus care) {
        SnapshotDraft cared = new SnapshotDraft(frame.snapshot());
        cared.care = care;
        return new Frame(
                cared.done(), frame.trends(), frame.log(), frame.now(), frame.losses(), frame.safeSources(), "");
    }
}
