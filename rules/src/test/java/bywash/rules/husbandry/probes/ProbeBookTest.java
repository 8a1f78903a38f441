package bywash.rules.husbandry.probes;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.Sites;
import bywash.rules.husbandry.probes.ProbeCareStatus.State;
import bywash.rules.published.PublishedTable;
import bywash.rules.water.PhCalibration.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProbeBookTest {
    private final List<String> remarks = new ArrayList<>();
    private final ProbeBook book = new ProbeBook(Sites.site(), remarks::add);

    private void book(OperatorEntry... entries) {
        for (OperatorEntry entry : entries) {
            switch (entry.kind()) {
                case CALIBRATE -> book.book((Calibrate) entry);
                case PROBE_CARE -> book.book((ProbeCare) entry);
                case TEST -> book.book((WaterTest) entry);
                default -> throw new IllegalArgumentException(entry.word() + " is nothing to the probes");
            }
        }
    }

    private static CalibrationPoint ph(double buffer, double mv) {
        return new CalibrationPoint(buffer, "pH", mv, "mV");
    }

    private static Calibrate electrode(double days, double slopeMv, double offsetMv) {
        return new Calibrate(
                day(days),
                "fish-ph",
                "",
                List.of(ph(4.005, offsetMv - slopeMv * (4.005 - 7)), ph(6.865, offsetMv - slopeMv * (6.865 - 7))),
                25);
    }

    private static Calibrate oxygen(double days, double standard, double reading) {
        return new Calibrate(
                day(days), "fish-do", "", List.of(new CalibrationPoint(standard, "mg/L", reading, "mg/L")), Double.NaN);
    }

    private ProbeCareStatus status(String probe, double days) {
        return book.status(day(days)).stream()
                .filter(s -> s.probe().equals(probe))
                .findFirst()
                .orElseThrow();
    }

    @Test
    @DisplayName("slope against the ideal of the Nernst equation (CODATA 2018 table) at the temperature of the buffers")
    void slopeIsAgainstTheIdeal() {
        PublishedTable.Row at25 = PublishedTable.read("nernst_slope", 11).rows().get(5);
        book(electrode(0, 0.97 * at25.number("slope_mV_per_pH"), 6));
        CalibrationResult result = Objects.requireNonNull(status("fish-ph", 1).latest());
        assertEquals(97, result.slopePercent(), 0.001);
        assertEquals(6, result.offset(), 1e-9);
        assertEquals(Verdict.GOOD, result.verdict());
        assertEquals("slope 97.0 %, offset +6.00 mV: good", result.words());
        assertEquals(State.GOOD, status("fish-ph", 1).state());
    }

    @Test
    void anElectrodeOutOfSlopeMakesItsReadingsSuspect() {
        book(electrode(0, 50, 2));
        assertEquals(State.FAULTY, status("fish-ph", 1).state());
        assertEquals("calibration found it faulty", book.suspect("fish-ph", day(1)));
        book(electrode(2, 57, 2));
        assertEquals("", book.suspect("fish-ph", day(3)));
    }

    @Test
    void driftIsWhatTheOldCalibrationWouldHaveReadInTheBuffersNow() {
        book(electrode(0, 58, 0), electrode(28, 58, -8.12));
        Drift drift = Objects.requireNonNull(status("fish-ph", 29).drift());
        assertEquals(8.12 / 58, drift.error(), 1e-9);
        assertEquals(28, drift.days(), 1e-9);
        assertEquals("drifted +0.14 in 28 d, +0.15 a month", drift.words());
        assertEquals(State.GOOD, status("fish-ph", 40).state());
    }

    @Test
    void aProbeThatDriftsFastIsDueSooner() {
        book(electrode(0, 58, 0), electrode(10, 58, -11.6));
        assertEquals(day(10 + 0.2 / 0.02), status("fish-ph", 12).dueAt());
        assertEquals(State.DUE_SOON, status("fish-ph", 14).state());
    }

    @Test
    void anOverdueProbeIsSuspectAndSaysForHowLong() {
        book(electrode(0, 58, 0));
        assertEquals(State.DUE_SOON, status("fish-ph", 25).state());
        assertEquals("calibration overdue by 4 d", book.suspect("fish-ph", day(34)));
        assertTrue(
                status("fish-ph", 34).words().startsWith("suspect: calibration overdue by 4 d; calibrated 34 d ago"));
    }

    @Test
    void aProbeNeverCalibratedIsNotOnRecordButNotSuspect() {
        assertEquals(State.NOT_ON_RECORD, status("fish-do", 100).state());
        assertEquals("no calibration on record", status("fish-do", 100).words());
        assertEquals("", book.suspect("fish-do", day(100)));
    }

    @Test
    void aReplacedProbeIsSuspectUntilItIsCalibrated() {
        book(oxygen(0, 8.26, 8.26), new ProbeCare(day(5), "fish-do", "replaced"));
        assertEquals("replaced and not calibrated since", book.suspect("fish-do", day(6)));
        book(oxygen(6, 8.26, 8.3));
        assertEquals("", book.suspect("fish-do", day(7)));
    }

    @Test
    @DisplayName(
            "oxygen in saturated air reads 8.26 at 25 Cel (Benson and Krause 1984); 7.85 there is 95 %, usable, error -0.41")
    void oxygenInAirTellsItsSlope() {
        book(oxygen(0, 8.2635, 8.26), oxygen(30, 8.2635, 7.84));
        CalibrationResult result = Objects.requireNonNull(status("fish-do", 31).latest());
        assertEquals(94.87, result.slopePercent(), 0.01);
        assertEquals(Verdict.USABLE, result.verdict());
        assertEquals(
                -0.4235, Objects.requireNonNull(status("fish-do", 31).drift()).error(), 1e-9);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {5, 6})
    @DisplayName("the slope through several standards agrees with Hipparchus")
    void slopeThroughStandardsAgrees(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SimpleRegression oracle = new SimpleRegression();
        List<CalibrationPoint> points = new ArrayList<>();
        for (double buffer : new double[] {4, 7, 10}) {
            double reading = buffer + random.nextDouble(-0.2, 0.2);
            oracle.addData(buffer, reading);
            points.add(new CalibrationPoint(buffer, "pH", reading, "pH"));
        }
        book(new Calibrate(day(0), "fish-ph", "", points, 25));
        CalibrationResult result = Objects.requireNonNull(status("fish-ph", 1).latest());
        assertEquals(100 * oracle.getSlope(), result.slopePercent(), 1e-9);
    }

    @Test
    void manualTestsThatDisagreeMakeTheReadingsSuspect() {
        book(electrode(0, 58, 0));
        for (int d = 1; d <= 3; d++) {
            book.reading("fish-ph", day(d), 7.4);
            book(new WaterTest(day(d), "fish-tank", "ph", 6.9));
        }
        assertEquals(State.DISAGREES, status("fish-ph", 4).state());
        assertEquals("+0.50 from the last 3 manual tests", book.suspect("fish-ph", day(4)));
        book(electrode(5, 58, 0));
        assertEquals("", book.suspect("fish-ph", day(6)));
    }

    @Test
    void aTestOfOldWaterIsNotCompared() {
        book.reading("fish-ph", day(0), 7.4);
        book(new WaterTest(day(1), "fish-tank", "ph", 6.0), new WaterTest(day(1), "sump", "ph", 6.0));
        assertEquals(List.of(), status("fish-ph", 2).differences());
    }

    @Test
    void aCalibrationThatIsNoneIsToldWithWhatWouldBeRight() {
        book(
                new Calibrate(day(0), "fish-ph", "", List.of(ph(4, 170)), 25),
                new Calibrate(day(1), "fish-do", "", List.of(ph(4, 170), ph(7, 0)), 25),
                new Calibrate(day(2), "fish", "by hand"));
        assertEquals(
                List.of(
                        "2026-03-01T08:00:00Z calibrate fish-ph: number of points is 1; it must be from 2 to 3",
                        "2026-03-02T08:00:00Z calibrate fish-do: points in pH and mV; both in mg/L",
                        "2026-03-03T08:00:00Z calibrate: probe fish is not one that is calibrated; one of fish-ph, fish-temp, fish-do, fish-orp"),
                remarks);
        assertNotNull(status("fish-ph", 3));
    }
}
