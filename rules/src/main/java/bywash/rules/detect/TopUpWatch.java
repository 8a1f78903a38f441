package bywash.rules.detect;

import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.text.Sentence;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** One declared release from start to the confirmation that its line is shut. Times in minutes of the balance. */
final class TopUpWatch {
    /** Still open? Nothing is said sooner after the end: hoses run empty. */
    private static final double SETTLE_MIN = 0.5;

    private static final double SURE_SE_L_MIN = 0.25;
    private static final double GIVE_UP_MIN = 25;
    private static final double OPEN_L_MIN = 0.4;

    /** What the watch says of the line. */
    enum Line {
        RUNNING,
        OVERRUN,
        CHECKING,
        SHUT,
        OPEN
    }

    private final TopUpStart entry;
    private final VesselFlow target;
    private final @Nullable VesselFlow reserve;
    private final double startMin;
    private final double reserveStartL;
    private SlopeFit measured;
    private @Nullable SlopeFit reserveRate;
    private @Nullable SlopeFit lately;
    private @Nullable Instant endedAt;
    private double endMin = Double.NaN;
    private double enteredL;
    private Line line = Line.RUNNING;
    private String confirmation = "";

    TopUpWatch(TopUpStart entry, double startMin, VesselFlow target, @Nullable VesselFlow reserve) {
        this.entry = entry;
        this.startMin = startMin;
        this.target = target;
        this.reserve = reserve;
        target.planned(true);
        this.measured = target.mark(startMin);
        this.reserveStartL = reserve == null ? Double.NaN : reserve.volumeL();
        if (reserve != null) {
            reserve.rebase();
        }
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

    double startMin() {
        return ended() ? endMin : startMin;
    }

    double plannedL() {
        return entry.volumeL();
    }

    double enteredL() {
        return enteredL;
    }

    double rateLMin() {
        SlopeFit byReserve = reserveRate;
        return byReserve != null && byReserve.seLMin() < measured.seLMin()
                ? -byReserve.rateLMin()
                : measured.rateLMin();
    }

    double rateSeLMin() {
        return reserveRate != null ? StrictMath.min(reserveRate.seLMin(), measured.seLMin()) : measured.seLMin();
    }

    void end(Instant at, double tMin) {
        if (endedAt == null) {
            tick(tMin);
            endedAt = at;
            endMin = tMin;
            line = Line.CHECKING;
            target.planned(false);
            measured = target.mark(tMin + SETTLE_MIN);
            if (reserve != null) {
                reserve.rebase();
                reserveRate = reserve.mark(tMin + SETTLE_MIN);
            }
        }
    }

    /** Watches whether the flow that was found after the end has since stopped. */
    private void open(double nowMin) {
        if (lately == null) {
            lately = target.mark(nowMin);
            return;
        }
        double age = nowMin - lately.onsetMin();
        double limit = 0.5 * StrictMath.abs(measured.rateLMin());
        if (age > 2 && lately.rateLMin() + 2 * lately.seLMin() < limit) {
            line = Line.SHUT;
            target.rebase();
            if (reserve != null) {
                reserve.rebase();
            }
            confirmation = "Line shut after all";
        } else if (age > 8) {
            lately = target.mark(nowMin);
        }
    }

    void tick(double nowMin) {
        if (line == Line.RUNNING || line == Line.OVERRUN) {
            running(nowMin);
        } else if (line == Line.CHECKING) {
            checking(nowMin);
        } else if (line == Line.OPEN) {
            open(nowMin);
        }
    }

    private void running(double nowMin) {
        double elapsed = nowMin - startMin;
        double error;
        if (reserve != null && !Double.isNaN(reserveStartL)) {
            error = 3 * reserve.noiseL();
            enteredL = StrictMath.max(0, reserveStartL - reserve.volumeL());
        } else {
            error = 3 * measured.seLMin() * elapsed;
            enteredL = StrictMath.max(0, measured.rateLMin()) * elapsed;
        }
        double planned = entry.volumeL();
        boolean past = enteredL - error > planned * 1.1 + 3;
        boolean late = elapsed > minutes(entry.duration()) * 1.1 + 2 && enteredL > planned * 1.1 + 3;
        line = past || late ? Line.OVERRUN : Line.RUNNING;
    }

    private void checking(double nowMin) {
        double since = nowMin - endMin;
        SlopeFit c = reserveRate != null && reserveRate.seLMin() < measured.seLMin() ? reserveRate : measured;
        double rate = StrictMath.abs(c.rateLMin());
        boolean into = c == measured ? c.rateLMin() > 0 : c.rateLMin() < 0;
        if (since > 2 && into && rate > OPEN_L_MIN && rate > 4.5 * c.seLMin()) {
            line = Line.OPEN;
            confirmation = Sentence.of("The line is not shut: %.1f +/- %.1f L/min still run", rate, 2 * c.seLMin());
        } else if (since > 4 && c.seLMin() < SURE_SE_L_MIN && (!into || rate < 3 * c.seLMin() || rate < OPEN_L_MIN)) {
            line = Line.SHUT;
            confirmation = Sentence.of(
                    "Line shut: %.1f +/- %.1f L/min over %.0f min", into ? rate : 0.0, 2 * c.seLMin(), since);
        } else if (since > GIVE_UP_MIN) {
            line = Line.SHUT;
            confirmation = "Not confirmed by the balance: look at the line";
        }
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
                confirmation);
    }

    private static double minutes(Duration duration) {
        return duration.toMillis() / 60_000.0;
    }
}
