package bywash.rules.chlorine;

import bywash.rules.water.FirstOrderLoss;
import bywash.rules.water.LossRate;
import bywash.rules.water.MixedTank;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** When a criterion is passed if all goes on as it does now, at most a day ahead. */
final class Forecast {
    private static final double AHEAD_MIN = 24 * 60;
    private static final int HALVINGS = 30;

    private final Residual now;
    private final Litres systemL;
    private final LossRate loss;
    private final double flowLMin;
    private final Residual inflow;

    /**
     * @param balance as it stands; all that runs now runs on at its rate
     */
    Forecast(SystemBalance balance) {
        this.now = balance.residual();
        this.systemL = balance.systemL();
        this.loss = balance.loss();
        double flow = 0;
        double low = 0;
        double likely = 0;
        double high = 0;
        for (Inflow running : balance.running()) {
            flow += running.rateLMin();
            low += running.rateLMin() * running.source().lowMgL();
            likely += running.rateLMin() * running.source().likelyMgL();
            high += running.rateLMin() * running.source().highMgL();
        }
        this.flowLMin = flow;
        this.inflow = flow > 0 ? Residual.between(low / flow, likely / flow, high / flow) : Residual.ZERO;
    }

    boolean flowing() {
        return flowLMin > 0;
    }

    /** When the residual passes a limit (ug/L). */
    Crossing crossing(Instant at, double limitUgL) {
        double limit = limitUgL / 1000;
        if (flowing() && now.lowMgL() <= limit) {
            return new Crossing(
                    limitUgL,
                    true,
                    rise(at, new MixedTank(systemL.lowL(), now.highMgL()), inflow.highMgL(), loss.lowPerHour(), limit),
                    rise(
                            at,
                            new MixedTank(systemL.likelyL(), now.likelyMgL()),
                            inflow.likelyMgL(),
                            loss.likelyPerHour(),
                            limit),
                    rise(at, new MixedTank(systemL.highL(), now.lowMgL()), inflow.lowMgL(), loss.highPerHour(), limit));
        }
        if (flowing() || now.highMgL() <= limit) {
            return Crossing.none(limitUgL);
        }
        return new Crossing(
                limitUgL,
                false,
                fall(at, now.lowMgL(), loss.highPerHour(), limit),
                fall(at, now.likelyMgL(), loss.likelyPerHour(), limit),
                fall(at, now.highMgL(), loss.lowPerHour(), limit));
    }

    private @Nullable Instant rise(Instant at, MixedTank tank, double inMgL, double perHour, double limit) {
        if (tank.residualMgL() >= limit) {
            return at;
        }
        MixedTank.Inflow in = new MixedTank.Inflow(StrictMath.min(10_000, flowLMin), inMgL);
        double low = 0;
        double high = 1;
        while (high < AHEAD_MIN && tank.filling(in, perHour, high).residualMgL() < limit) {
            low = high;
            high *= 2;
        }
        if (tank.filling(in, perHour, StrictMath.min(high, AHEAD_MIN)).residualMgL() < limit) {
            return null;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            boolean passed = tank.filling(in, perHour, middle).residualMgL() >= limit;
            low = passed ? low : middle;
            high = passed ? middle : high;
        }
        return at.plusMillis(StrictMath.round(high * 60_000));
    }

    private static @Nullable Instant fall(Instant at, double mgL, double perHour, double limit) {
        LossRate rate = new LossRate(perHour, perHour, perHour);
        double hours = FirstOrderLoss.until(mgL, limit, rate).likelyH();
        return hours > 24 * 30 ? null : at.plusMillis(StrictMath.round(hours * 3_600_000));
    }
}
