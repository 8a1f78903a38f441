package bywash.rules.detect;

import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.text.Sentence;
import bywash.rules.text.Spans;
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
    private static final double GIVE_UP_MIN = TopUp.GIVEN_UP_AFTER.toMinutes();
    private static final double LEAST_CHECK_MIN = TopUp.CHECKED_FOR.toMinutes();
    private static final double OPEN_L_MIN = 0.4;
    /** Less than this share of what was to come by now is nothing. */
    private static final double NOTHING_SHARE = 0.25;

    private static final double NOTHING_AFTER_MIN = 3;
    private static final double STOPPED_AFTER_MIN = 4;

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
    private final ReleaseMeter meter;
    private final double startMin;
    private @Nullable Instant endedAt;
    private double endMin = Double.NaN;
    private double openUntilMin = Double.NEGATIVE_INFINITY;
    private Line line = Line.RUNNING;
    /** As {@link TopUp#line} and {@link TopUp#came}. */
    private String words = "";

    private String came = "";

    TopUpWatch(TopUpStart entry, double startMin, VesselFlow target, @Nullable VesselFlow reserve) {
        this.entry = entry;
        this.startMin = startMin;
        this.meter = new ReleaseMeter(target, reserve, startMin);
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
        return meter.enteredL();
    }

    double enteredSeL() {
        return meter.enteredSeL();
    }

    String words() {
        return view().confirmation();
    }

    /** One standard error of what is booked of it for a vessel, L; 0 for others. */
    double bookedSeL(String vessel) {
        return vessel.equals(vessel()) || vessel.equals(source()) ? enteredSeL() : 0;
    }

    /** L/min, positive into the vessel. */
    double rateLMin() {
        return line == Line.OPEN ? StrictMath.abs(meter.followed().rateLMin()) : meter.rateLMin();
    }

    double rateSeLMin() {
        return line == Line.OPEN ? meter.followed().rateSeLMin() : meter.rateSeLMin();
    }

    /** Whether what moved between two minutes is water of this line, which ran on after the end. */
    boolean ranOn(double fromMin, double untilMin) {
        return fromMin < openUntilMin && untilMin > endMin;
    }

    /** Litres since the end, of a line that is open. */
    double openL(double nowMin) {
        return line == Line.OPEN ? StrictMath.abs(meter.followed().movedL(nowMin)) : 0;
    }

    double openSeL(double nowMin) {
        return line == Line.OPEN ? meter.followed().movedSeL(nowMin) : 0;
    }

    void end(Instant at, double tMin) {
        if (endedAt == null) {
            tick(tMin);
            endedAt = at;
            endMin = tMin;
            line = Line.CHECKING;
            words = "";
            meter.ended(tMin + SETTLE_MIN);
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
        meter.count(elapsed, line != Line.IDLE);
        boolean past = enteredL() - 3 * enteredSeL() > mostL();
        boolean late = elapsed > minutes(entry.duration()) * 1.1 + 2 && enteredL() > mostL();
        boolean idle = line == Line.IDLE ? !flowsAgain(nowMin) : nothing(elapsed) || stopped(nowMin);
        if (idle != (line == Line.IDLE)) {
            meter.planned(!idle);
        }
        line = idle ? Line.IDLE : past || late ? Line.OVERRUN : Line.RUNNING;
        words = idle ? idleWords(elapsed) : "";
        meter.renew(nowMin);
    }

    /** What may still come, by its declaration and before it is said to run over, L; without end where it is undeclared. */
    double toComeL() {
        return switch (line) {
            case RUNNING, IDLE -> StrictMath.max(0, mostL() - enteredL() + 2 * enteredSeL());
            case CHECKING, SHUT -> 0;
            case OVERRUN, OPEN -> Double.POSITIVE_INFINITY;
        };
    }

    /** What comes beyond this is not taken for the declared volume any more, L. */
    private double mostL() {
        return entry.volumeL() * 1.1 + 3;
    }

    private boolean nothing(double elapsed) {
        double expected = plannedLMin() * StrictMath.min(elapsed, minutes(entry.duration()));
        return meter.known() && elapsed > NOTHING_AFTER_MIN && enteredL() + 2 * enteredSeL() < NOTHING_SHARE * expected;
    }

    private double plannedLMin() {
        return entry.volumeL() / StrictMath.max(1, minutes(entry.duration()));
    }

    /** Whether the last minutes show that nothing flows any more. */
    private boolean stopped(double nowMin) {
        double least = 0.1 + 0.2 * StrictMath.min(plannedLMin(), 10);
        Slope lately = meter.lately(nowMin);
        return lately.minutes() > STOPPED_AFTER_MIN
                && enteredL() > 0.25 * entry.volumeL()
                && lately.rateLMin() + 2 * lately.seLMin() < least;
    }

    /** More than was planned is never taken for the top-up going on. */
    private boolean flowsAgain(double nowMin) {
        Slope lately = meter.lately(nowMin);
        return lately.rateLMin() > OPEN_L_MIN
                && lately.rateLMin() > 4.5 * lately.seLMin()
                && (meter.byReserve() || enteredL() < 0.9 * entry.volumeL());
    }

    private String idleWords(double elapsed) {
        String litres = Spread.of(enteredL(), enteredSeL()).words();
        if (enteredL() < NOTHING_SHARE * entry.volumeL()) {
            return "Nothing comes: " + litres + " in " + Spans.ofMinutes(elapsed)
                    + ". Is the valve open, the hose kinked, the source empty";
        }
        return enteredL() < 0.9 * entry.volumeL() - 2 * enteredSeL()
                ? "It has stopped before its volume: " + litres
                        + " came. Is the source empty, the valve shut? End it (e)"
                : "It has stopped by itself: " + litres + " came. End it (e), so that the line is checked";
    }

    private void checking(double nowMin) {
        double since = nowMin - endMin;
        double rate = meter.rateLMin();
        double se = meter.checkedSeLMin();
        if (since > SETTLE_MIN && since < 3 * SETTLE_MIN) {
            meter.countAll();
        }
        if (since > 2 && rate > OPEN_L_MIN && rate > 4.5 * se) {
            line = Line.OPEN;
            openUntilMin = Double.POSITIVE_INFINITY;
            meter.follow(endMin, rate);
            words = Sentence.of("The line is not shut: %.1f +/- %.1f L/min still run", rate, 2 * se);
        } else if (since > LEAST_CHECK_MIN
                && meter.rateSeLMin() < SURE_SE_L_MIN
                && (rate < 3 * se || rate < OPEN_L_MIN)) {
            line = Line.SHUT;
            words = Sentence.of("Line shut: %.1f +/- %.1f L/min over %.0f min", StrictMath.max(0, rate), 2 * se, since);
            came = cameIn();
        } else if (since > GIVE_UP_MIN) {
            line = Line.SHUT;
            words = TopUp.UNSURE;
            came = cameIn();
        }
    }

    private String cameIn() {
        String all = Spread.of(enteredL(), enteredSeL()).words() + " came in";
        double more = enteredL() - entry.volumeL();
        return enteredL() - 3 * enteredSeL() > mostL()
                ? all + ", " + Spread.of(more, enteredSeL()).words() + " of them more than declared"
                : all;
    }

    /** The flow that was found after the end is followed like any other. */
    private void open(double nowMin) {
        if (meter.followed().motion() == Motion.IN || meter.followed().motion() == Motion.OUT) {
            words = Sentence.of("The line is not shut: %.1f +/- %.1f L/min still run", rateLMin(), 2 * rateSeLMin());
            return;
        }
        PastFlows.Past after = meter.followed().past();
        line = Line.SHUT;
        openUntilMin = nowMin;
        meter.rebase();
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
                enteredL(),
                enteredSeL(),
                words,
                came);
    }

    private static double minutes(Duration duration) {
        return duration.toMillis() / 60_000.0;
    }
}
