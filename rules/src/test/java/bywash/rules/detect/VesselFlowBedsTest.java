package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VesselFlowBedsTest {
    private final KnownSump sump = new KnownSump(new double[] {6.5, 7.5}, new double[] {70, 85}, 3);
    private final VesselFlow flow =
            new VesselFlow(1.5, new Hold(2, 220, 75), Duration.ofSeconds(10), Pump.TOLD, Double.POSITIVE_INFINITY);
    private long second;

    private void run(double untilMin) {
        while (second < untilMin * 60) {
            sump.step();
            if (second % 10 == 0) {
                flow.level(second / 60.0, sump.readL());
            }
            if (second % 5 == 0) {
                flow.decide(second / 60.0);
            }
            second++;
        }
    }

    private double found(double fromMin, double mostMin, Motion wanted) {
        while (second < (fromMin + mostMin) * 60 && flow.motion() != wanted) {
            run(second / 60.0 + 0.25);
        }
        return flow.motion() == wanted ? second / 60.0 - fromMin : Double.POSITIVE_INFINITY;
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.5, 4, 8, 14})
    void findsAnInflowUnderSiphonsAndItsRate(double rate) {
        run(480);
        assertEquals(Motion.STEADY, flow.motion());
        sump.inflowLMin = rate;
        double after = found(480, 45, Motion.IN);
        assertTrue(after < 45, "after " + after);
        assertEquals(480, flow.onsetMin(), 25);
        run(second / 60.0 + 10);
        assertTrue(flow.rateLMin() > 0.4 * rate && flow.rateLMin() < 2.5 * rate, "rate " + flow.rateLMin());
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 13, 16, 20, 24})
    void aLargeInflowIsToldFromADrainBecauseNoDrainIsSoSlowForSoLong(double rate) {
        run(480);
        sump.inflowLMin = rate;
        double after = found(480, 45, Motion.IN);
        assertTrue(after < 6, "after " + after);
        assertEquals(rate, flow.rateLMin(), 0.35 * rate);
        assertEquals(480, flow.onsetMin(), 3);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-2, -5})
    void findsALossUnderSiphons(double rate) {
        run(480);
        sump.inflowLMin = rate;
        assertTrue(found(480, 45, Motion.OUT) < 45);
    }

    @ParameterizedTest
    @ValueSource(doubles = {5})
    void saysSoWhenTheInflowHasStopped(double rate) {
        run(480);
        sump.inflowLMin = rate;
        found(480, 45, Motion.IN);
        sump.inflowLMin = 0;
        assertTrue(found(second / 60.0, 60, Motion.STEADY) < 60);
    }

    @Test
    void saysWhatCanBeFoundMeanwhileAndLearnsToFindLess() {
        run(20);
        double first = flow.views().findsLMin(30);
        run(100);
        double hour = flow.views().findsLMin(30);
        run(480);
        double learned = flow.views().findsLMin(30);
        assertTrue(first > 5 && first > hour && hour > learned, first + " " + hour + " " + learned);
        sump.inflowLMin = 1.2 * learned;
        assertTrue(found(480, 30, Motion.IN) <= 30, "not found at " + sump.inflowLMin);
    }

    @Test
    void whatItSaysCanBeFoundAfterAnHourIsFound() {
        run(60);
        sump.inflowLMin = 1.2 * flow.views().findsLMin(30);
        assertTrue(found(60, 30, Motion.IN) <= 30, "not found at " + sump.inflowLMin);
    }

    @Test
    void whileOnlyTheBedsSizeIsKnownAFlowOfThatMuchIsFound() {
        run(15);
        assertEquals(Motion.LEARNING, flow.motion());
        sump.inflowLMin = 1.2 * flow.views().findsLMin(30);
        assertTrue(found(15, 30, Motion.IN) <= 30, "not found at " + sump.inflowLMin);
    }
}
