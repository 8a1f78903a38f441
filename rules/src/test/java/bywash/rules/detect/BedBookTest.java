package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The book is told exactly when drains begin and end, as its own sake: how these are seen is tested elsewhere. */
class BedBookTest {
    private final KnownSump sump = new KnownSump(new double[] {5, 6.5, 8}, new double[] {66, 75, 84}, 8);
    private final BedBook book = new BedBook(3);
    private boolean draining;
    private long second;

    private void run(double minutes) {
        double until = second + minutes * 60;
        while (second < until) {
            double before = sump.sumpL;
            sump.step();
            boolean rises = sump.sumpL > before;
            double tMin = second / 60.0;
            if (rises && !draining) {
                book.drainBegins(tMin, 1.5);
            } else if (!rises && draining) {
                book.drainsOver(tMin);
            }
            draining = rises;
            if (!rises && second % 10 == 0) {
                book.filling(tMin, sump.readL(), 19.5, 1.5);
            }
            second++;
        }
    }

    @Test
    void isSeldomWrongForLongWhileNoWaterComesOrGoes() {
        run(600);
        int heard = 0;
        for (int i = 0; i < 600; i++) {
            run(1);
            heard += StrictMath.max(book.logRatio(1, 0), book.logRatio(-1, 0)) > 5 ? 1 : 0;
        }
        assertTrue(book.learned());
        assertTrue(heard < 30, "minutes " + heard);
    }

    @Test
    void tellsASlowInflowFromBedsThatOnlyShareWater() {
        run(600);
        double before = sump.totalL();
        sump.inflowLMin = 0.8;
        run(45);
        assertEquals(36, sump.totalL() - before, 1e-6);
        assertTrue(book.logRatio(1, 0) > 5, "in " + book.logRatio(1, 0));
        assertTrue(book.logRatio(-1, 0) < 2, "out " + book.logRatio(-1, 0));
    }

    @Test
    void isNotHeardWhileWaterIsLetInAsPlanned() {
        run(600);
        book.moving(true);
        sump.inflowLMin = 5;
        run(20);
        sump.inflowLMin = 0;
        book.moving(false);
        assertEquals(0, book.logRatio(1, 0));
        run(120);
        assertTrue(book.logRatio(1, 0) < 6, "in " + book.logRatio(1, 0));
    }

    /** What means show is borne out by the same flow alone: a step that only looks like a larger and younger one is not it. */
    @Test
    void speaksForOneFlowAndAgainstAnother() {
        run(600);
        double quietMin = second / 60.0;
        double none = book.logRatioOf(onset -> onset < quietMin - 20 && onset > quietMin - 40 ? 1.5 : Double.NaN, 0);
        assertTrue(none < -5, "nothing came " + none);
        sump.inflowLMin = 0.8;
        run(45);
        double nowMin = second / 60.0;
        double such = book.logRatioOf(onset -> onset < quietMin + 10 && onset > quietMin - 10 ? 0.9 : Double.NaN, 0);
        double large = book.logRatioOf(onset -> onset > nowMin - 10 ? 20 : Double.NaN, 0);
        assertTrue(such > 5, "such a flow " + such);
        assertTrue(large <= 0, "another " + large);
        assertEquals(0, book.logRatioOf(onset -> Double.NaN, 0), "no such ramp");
    }
}
