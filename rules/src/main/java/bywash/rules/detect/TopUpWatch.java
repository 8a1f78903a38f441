package bywash.rules.detect;

import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.text.Sentence;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One declared release from start to the confirmation that its line is shut. Litres are read from the reserve where it has
 * a level, else from the vessel that is topped up. Times in minutes of the balance.
 */
final class TopUpWatch {
    /** Still open? Nothing is said sooner after the end: hoses run empty. */
    private static final double SETTLE_MIN = 0.5;

    private static final double SURE_SE_L_MIN = 0.25;
    private static final double GIVE_UP_MIN = 25;
    private static final double OPEN_L_MIN = 0.4;
    /** Less than this share of what was to come by now is nothing. */
    private static final double NOTHING_SHARE = 0.25;

    private static final double NOTHING_AFTER_MIN = 3;
    private static final double STOPPED_AFTER_MIN = 4;
    private static final double LOOK_MIN = 8;

    /** What the watch says of the line. */
    enum Line {
        RUNNING,
        /** Declared and not ended, but nothing comes, or no more. */
        IDLE,
        OVERRUN,
        CHECKING,
        SHUT,
        OPEN;

        /** Whether water in the line explains what the vessel does. */
        boolean explains() {
            return switch (this) {
                case RUNNING, OVERRUN, CHECKING, OPEN -> true;
                case IDLE, SHUT -> false;
            };
        }
    }

    private final TopUpStart entry;
    private final VesselFlow target;
    private final @Nullable VesselFlow reserve;
    private final VesselFlow meter;
    private final double startMin;
    private final double startL;
    private SlopeFit measured;
    private @Nullable SlopeFit reserveRate;
    private SlopeFit lately;
    private @Nullable Instant endedAt;
    private double endMin = Double.NaN;
    private double openUntilMin = Double.NEGATIVE_INFINITY;
    private double enteredL;
    private double enteredSeL;
    private Line line = Line.RUNNING;
    /** As {@link TopUp#line} and {@link TopUp#came}. */
    private String words = "";

    private String came = "";

    TopUpWatch(TopUpStart entry, double startMin, VesselFlow target, @Nullable VesselFlow reserve) {
        this.entry = entry;
        this.startMin = startMin;
        this.target = target;
        boolean metered = reserve != null && !Double.isNaN(reserve.views().volumeL());
        this.reserve = metered ? reserve : null;
        this.meter = this.reserve == null ? target : this.reserve;
        target.planned(true);
        this.startL = meter.views().recentL();
        this.measured = target.views().mark(startMin);
        if (this.reserve != null) {
            this.reserve.planned(true);
        }
        this.lately = meter.views().mark(startMin);
    }

    String vessel() {
        return entry.vessel();
    }

    String source() {
        return entry.source();
    }

    Line line() {
        return line;
    }

    boolean ended() {
        return endedAt != null;
    }

    double sinceMin() {
        return ended() ? endMin : startMin;
    }

    double plannedL() {
        return entry.volumeL();
    }

    double enteredL() {
        return enteredL;
    }

    double enteredSeL() {
        return enteredSeL;
    }

    String words() {
        return view().confirmation();
    }

    /** One standard error of what is booked of it for a vessel, L; 0 for others. */
    double bookedSeL(String vessel) {
        return vessel.equals(vessel()) || vessel.equals(source()) ? enteredSeL : 0;
    }

    /** L/min, positive into the vessel. */
    double rateLMin() {
        return line == Line.OPEN ? StrictMath.abs(meter.rateLMin()) : inward(surest());
    }

    double rateSeLMin() {
        return line == Line.OPEN ? meter.rateSeLMin() : surest().seLMin();
    }

    /** Whether what moved between two minutes is water of this line, which ran on after the end. */
    boolean ranOn(double fromMin, double untilMin) {
        return fromMin < openUntilMin && untilMin > endMin;
    }

    /** Litres since the end, of a line that is open. */
    double openL(double nowMin) {
        return line == Line.OPEN ? StrictMath.abs(meter.movedL(nowMin)) : 0;
    }

    double openSeL(double nowMin) {
        return line == Line.OPEN ? meter.movedSeL(nowMin) : 0;
    }

    private SlopeFit surest() {
        SlopeFit byReserve = reserveRate;
        return byReserve != null && byReserve.seLMin() < measured.seLMin() ? byReserve : measured;
    }

    private double inward(SlopeFit fit) {
        return fit == reserveRate || fit == lately && reserve != null ? -fit.rateLMin() : fit.rateLMin();
    }

    void end(Instant at, double tMin) {
        if (endedAt == null) {
            tick(tMin);
            endedAt = at;
            endMin = tMin;
            line = Line.CHECKING;
            words = "";
            target.planned(false);
            measured = target.views().mark(tMin + SETTLE_MIN);
            if (reserve != null) {
                reserve.planned(false);
                reserveRate = reserve.views().mark(tMin + SETTLE_MIN);
            }
        }
    }

    void tick(double nowMin) {
        switch (line) {
            case RUNNING, OVERRUN, IDLE -> running(nowMin);
            case CHECKING -> checking(nowMin);
            case OPEN -> open(nowMin);
            case SHUT -> {}
        }
    }

    private void running(double nowMin) {
        double elapsed = nowMin - startMin;
        if (reserve != null) {
            enteredL = StrictMath.max(0, startL - reserve.views().volumeL());
            enteredSeL = 1.2 * reserve.views().noiseL();
        } else if (line != Line.IDLE) {
            enteredL = StrictMath.max(0, measured.rateLMin()) * elapsed;
            enteredSeL =
                    finite(StrictMath.hypot(measured.seLMin(), target.views().standingSdLMin()) * elapsed);
        }
        double planned = entry.volumeL();
        boolean past = enteredL - 3 * enteredSeL > planned * 1.1 + 3;
        boolean late = elapsed > minutes(entry.duration()) * 1.1 + 2 && enteredL > planned * 1.1 + 3;
        boolean idle = nothing(elapsed) || stopped(nowMin);
        if (line == Line.IDLE) {
            idle = !flowsAgain();
        }
        if (idle != (line == Line.IDLE)) {
            target.planned(!idle);
            if (reserve != null) {
                reserve.planned(!idle);
            }
        }
        line = idle ? Line.IDLE : past || late ? Line.OVERRUN : Line.RUNNING;
        words = idle ? idleWords(elapsed) : "";
        if (nowMin - lately.onsetMin() > LOOK_MIN) {
            lately = meter.views().markAnew(lately, nowMin);
        }
    }

    private boolean nothing(double elapsed) {
        double expected = plannedLMin() * StrictMath.min(elapsed, minutes(entry.duration()));
        boolean known = reserve != null || Double.isFinite(measured.seLMin());
        return known && elapsed > NOTHING_AFTER_MIN && enteredL + 2 * enteredSeL < NOTHING_SHARE * expected;
    }

    private double plannedLMin() {
        return entry.volumeL() / StrictMath.max(1, minutes(entry.duration()));
    }

    /** Whether the last minutes show that nothing flows any more. */
    private boolean stopped(double nowMin) {
        double least = 0.1 + 0.2 * StrictMath.min(plannedLMin(), 10);
        return nowMin - lately.onsetMin() > STOPPED_AFTER_MIN
                && enteredL > 0.25 * entry.volumeL()
                && inward(lately)
                                + 2
                                        * StrictMath.hypot(
                                                lately.seLMin(), meter.views().standingSdLMin())
                        < least;
    }

    /** More than was planned is never taken for the top-up going on. */
    private boolean flowsAgain() {
        double rate = inward(lately);
        return rate > OPEN_L_MIN
                && rate > 4.5 * StrictMath.hypot(lately.seLMin(), meter.views().standingSdLMin())
                && (reserve != null || enteredL < 0.9 * entry.volumeL());
    }

    private String idleWords(double elapsed) {
        String litres = Spread.of(enteredL, enteredSeL).words();
        if (enteredL < NOTHING_SHARE * entry.volumeL()) {
            return Sentence.of(
                    "Nothing comes: %s in %.0f min. Is the valve open, the hose kinked, the source empty",
                    litres, elapsed);
        }
        return enteredL < 0.9 * entry.volumeL() - 2 * enteredSeL
                ? "It has stopped before its volume: " + litres
                        + " came. Is the source empty, the valve shut? End it (e)"
                : "It has stopped by itself: " + litres + " came. End it (e), so that the line is checked";
    }

    private void checking(double nowMin) {
        double since = nowMin - endMin;
        SlopeFit c = surest();
        double rate = inward(c);
        double se = c == reserveRate
                ? c.seLMin()
                : StrictMath.hypot(c.seLMin(), 0.5 * target.views().standingSdLMin());
        if (reserve != null && since > SETTLE_MIN && since < 3 * SETTLE_MIN) { // the hose has run empty
            enteredL = StrictMath.max(0, startL - reserve.views().recentL());
            enteredSeL = 0.8 * reserve.views().noiseL();
        }
        if (since > 2 && rate > OPEN_L_MIN && rate > 4.5 * se) {
            line = Line.OPEN;
            openUntilMin = Double.POSITIVE_INFINITY;
            meter.follow(endMin, meter == target ? rate : -rate);
            words = Sentence.of("The line is not shut: %.1f +/- %.1f L/min still run", rate, 2 * se);
        } else if (since > 4 && c.seLMin() < SURE_SE_L_MIN && (rate < 3 * se || rate < OPEN_L_MIN)) {
            line = Line.SHUT;
            words = Sentence.of("Line shut: %.1f +/- %.1f L/min over %.0f min", StrictMath.max(0, rate), 2 * se, since);
            came = Spread.of(enteredL, enteredSeL).words() + " came in";
        } else if (since > GIVE_UP_MIN) {
            line = Line.SHUT;
            words = "Not confirmed by the balance: look at the line";
            came = Spread.of(enteredL, enteredSeL).words() + " came in";
        }
    }

    /** The flow that was found after the end is followed like any other. */
    private void open(double nowMin) {
        if (meter.motion() == Motion.IN || meter.motion() == Motion.OUT) {
            words = Sentence.of("The line is not shut: %.1f +/- %.1f L/min still run", rateLMin(), 2 * rateSeLMin());
            return;
        }
        PastFlows.Past after = meter.past();
        line = Line.SHUT;
        openUntilMin = nowMin;
        target.rebase();
        words = "Line shut after all";
        came = after == null ? "" : Spread.of(after.litres(), after.seL()).words() + " came after the end";
    }

    TopUp view() {
        return new TopUp(
                entry.vessel(),
                entry.source(),
                entry.volumeL(),
                entry.duration(),
                entry.at(),
                endedAt,
                enteredL,
                enteredSeL,
                words,
                came);
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : 0;
    }

    private static double minutes(Duration duration) {
        return duration.toMillis() / 60_000.0;
    }
}
