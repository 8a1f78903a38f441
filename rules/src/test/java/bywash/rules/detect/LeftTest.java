package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LeftTest {
    private static final double FLOW_L_MIN = 8;

    @Test
    void aSlopeThatIsHardlySeenLeavesTheOddsOfValvesThatAreTurnedDown() {
        Left left = Left.of(FLOW_L_MIN, new Slope(0, 1000, 1));

        double rulesNothingOut = 0.1 * (1 - StrictMath.sqrt(FlowEvidence.FLOOR_L_MIN / FLOW_L_MIN));
        assertEquals(rulesNothingOut, left.odds(), 0.005);
        assertTrue(left.sdLMin() > left.meanLMin());
    }

    @Test
    void aSureSlopeIsWhatIsLeftEitherWay() {
        Slope one = new Slope(1, 0.1, 20);
        Slope minusOne = new Slope(-1, 0.1, 20);

        assertEquals(1, Left.of(FLOW_L_MIN, one).meanLMin(), 0.1);
        assertEquals(-1, Left.of(-FLOW_L_MIN, minusOne).meanLMin(), 0.1);
        assertTrue(Left.of(FLOW_L_MIN, one).odds() > 1e6);
    }

    @Test
    void nothingIsLeftWhereTheLevelStands() {
        Left left = Left.of(FLOW_L_MIN, new Slope(0, 0.1, 20));

        assertTrue(left.odds() < 1e-3);
        assertEquals(0, left.meanLMin(), 1e-3);
    }

    @Test
    void aSlopeFarBeyondTheFlowStaysFinite() {
        Left left = Left.of(FLOW_L_MIN, new Slope(30, 0.01, 20));

        assertTrue(left.meanLMin() > 0 && left.meanLMin() < FLOW_L_MIN);
        assertTrue(Double.isFinite(left.sdLMin()));
    }
}
