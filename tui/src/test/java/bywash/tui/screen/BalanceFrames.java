package bywash.tui.screen;

import bywash.rules.detect.BalanceLine;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.Moved;
import bywash.rules.detect.TopUp;
import bywash.rules.engine.Snapshot;
import bywash.rules.engine.VesselStatus;
import bywash.tui.view.Frame;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Frames with the hourly water balance; numbers and words as the rules give them. */
final class BalanceFrames {
    private BalanceFrames() {}

    private static final BalanceLine RESERVE = new BalanceLine("reserve", 817, -0.1, 0, 0, 0, 0.4, 0.35, null, false);

    /** Quiet, long learned. */
    static Frame quiet() {
        return with(
                Frames.quiet(),
                null,
                List.of(
                        new BalanceLine("sump", 395, -2.1, 0, 0, -0.8, 4.1, 0.9, null, false),
                        RESERVE,
                        new BalanceLine("system", 1212, -2.2, 0, 0, -0.8, 4.1, 0.9, null, false)),
                finding(Verdict.QUIET, 0, "The level does what its known cycles explain."));
    }

    /** A valve left open. */
    static Frame valveOpen() {
        Moved running = new Moved(Frames.NOW.minus(Duration.ofMinutes(8)), null, 33, 3);
        return with(
                Frames.valveOpen(),
                null,
                List.of(
                        new BalanceLine("sump", 604, 26.2, 0, 27.4, -0.8, 4.8, 0.9, running, false),
                        RESERVE,
                        new BalanceLine("system", 1421, 26.1, 0, 27.4, -0.8, 4.8, 0.9, null, false)),
                Frames.valveOpen().snapshot().vessels().get(0).flow());
    }

    /** The valve has been shut for a quarter of an hour. */
    static Frame valveShut() {
        Moved over =
                new Moved(Frames.NOW.minus(Duration.ofMinutes(50)), Frames.NOW.minus(Duration.ofMinutes(15)), 284, 14);
        return with(
                Frames.quiet(),
                null,
                List.of(
                        new BalanceLine("sump", 675, 278.2, 0, 282.6, -0.8, 14.6, 0.9, over, false),
                        RESERVE,
                        new BalanceLine("system", 1492, 278.1, 0, 282.6, -0.8, 14.6, 0.9, null, false)),
                finding(Verdict.QUIET, 0, "The level does what its known cycles explain."));
    }

    /** A declared top-up goes as planned. */
    static Frame toppingUp() {
        Frame running = Frames.topUpRunning();
        return with(
                running,
                running.snapshot().topUp(),
                List.of(
                        new BalanceLine("sump", 480, 38.5, 41.0, 0, -0.8, 4.1, 0.9, null, false),
                        new BalanceLine("reserve", 736, -41.2, -41.0, 0, 0, 0.4, 0.35, null, false),
                        new BalanceLine("system", 1216, -2.7, 0, 0, -0.8, 4.1, 0.9, null, false)),
                running.snapshot().vessels().get(0).flow());
    }

    /** It was never ended, and more than was declared has come. */
    static Frame ranOver() {
        Frame running = Frames.topUpRanOver();
        return with(
                running,
                running.snapshot().topUp(),
                List.of(
                        new BalanceLine("sump", 580, 211.5, 160, 52, -0.8, 4.1, 0.9, null, false),
                        new BalanceLine("reserve", 537, -212.0, -160, -52, 0, 0.4, 0.35, null, false),
                        new BalanceLine("system", 1117, -0.5, 0, 0, -0.8, 4.1, 0.9, null, false)),
                running.snapshot().vessels().get(0).flow());
    }

    /** Started twenty minutes ago. */
    static Frame learning() {
        return with(
                Frames.quiet(),
                null,
                List.of(
                        new BalanceLine("sump", 395, Double.NaN, 0, 0, 0, Double.NaN, 18, null, false),
                        new BalanceLine("reserve", 817, Double.NaN, 0, 0, 0, Double.NaN, 0.35, null, false),
                        new BalanceLine("system", 1212, Double.NaN, 0, 0, 0, Double.NaN, 18, null, false)),
                finding(
                        Verdict.LEARNING,
                        0,
                        "Learning the siphon cycles; meanwhile a flow of 18.0 L/min or more is found within 30 min."));
    }

    /** A top-up has ended; its line is shut, or still runs. */
    static Frame toppedUp(boolean shut) {
        String words =
                shut ? "Line shut: 0.0 +/- 0.3 L/min over 5 min" : "The line is not shut: 1.4 +/- 0.4 L/min still run";
        String came = shut ? "158 L (155 to 161 L) came in" : "";
        Instant start = Frames.NOW.minus(Duration.ofMinutes(46));
        Instant end = Frames.NOW.minus(Duration.ofMinutes(6));
        TopUp topUp = new TopUp("sump", "reserve", 160, Duration.ofMinutes(40), start, end, 158, 1.6, words, came);
        FlowFinding flow = shut
                ? finding(Verdict.QUIET, 0, "The level does what its known cycles explain.")
                : finding(Verdict.LINE_NOT_SHUT, 1.4, "The top-up was ended. " + words + ".");
        double more = shut ? 0 : 8.4;
        return with(
                Frames.quiet(),
                topUp,
                List.of(
                        new BalanceLine("sump", 556 + more, 157.1 + more, 158, more, -0.8, 4.1, 0.9, null, false),
                        new BalanceLine("reserve", 659 - more, -158.1 - more, -158, -more, 0, 0.4, 0.35, null, false),
                        new BalanceLine("system", 1215, -1.0, 0, 0, -0.8, 4.1, 0.9, null, false)),
                flow);
    }

    private static FlowFinding finding(Verdict verdict, double rate, String why) {
        Instant since = rate == 0 ? null : Frames.NOW.minus(Duration.ofMinutes(6));
        return new FlowFinding("sump", verdict, rate, 0.2, rate * 6, 1, since, "unknown", null, null, why);
    }

    private static Frame with(
            Frame frame, @Nullable TopUp topUp, List<BalanceLine> lines, @Nullable FlowFinding sumpFlow) {
        Snapshot s = frame.snapshot();
        List<VesselStatus> vessels = new ArrayList<>(s.vessels());
        VesselStatus sump = vessels.get(0);
        double litres = lines.get(0).litres();
        double mm = litres / 0.96;
        vessels.set(0, new VesselStatus(sump.vessel(), mm, litres, sump.vessel().overflowMm() - mm, sumpFlow));
        SnapshotDraft balanced = new SnapshotDraft(s);
        balanced.vessels = vessels;
        balanced.topUp = topUp;
        balanced.balance = lines;
        return new Frame(
                balanced.done(), frame.trends(), frame.log(), frame.now(), frame.losses(), frame.safeSources(), "");
    }
}
