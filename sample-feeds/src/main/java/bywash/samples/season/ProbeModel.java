package bywash.samples.season;

import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.ProbeCare;
import java.time.LocalDate;
import java.util.List;

/** The pH electrode drifts and slackens until it is calibrated; the oxygen probe loses until its membrane is changed. */
final class ProbeModel {
    private static final double IDEAL_MV = 58.2;
    private static final double BUFFER_4 = 4.001;
    private static final double BUFFER_7 = 6.881;
    private static final double AIR_MG_L = 8.99;

    private double phError;
    private double offsetMv;
    private double slope = 0.985;
    private double oxygenShare = 1;

    double phError() {
        return phError;
    }

    double oxygenShare() {
        return oxygenShare;
    }

    void day() {
        phError += 0.0035;
        offsetMv -= 0.0035 * IDEAL_MV;
        slope -= 0.00022;
        oxygenShare -= 0.0016;
    }

    void calibratePh(LocalDate day, Diary diary) {
        double mv = slope * IDEAL_MV;
        diary.enter(new ProbeCare(Diary.at(day, 15, 0), "fish-ph", "cleaned"));
        diary.enter(new Calibrate(
                Diary.at(day, 15, 20), "fish-ph", "", List.of(point(BUFFER_4, mv), point(BUFFER_7, mv)), 20));
        phError = 0;
        offsetMv *= 0.35;
    }

    private CalibrationPoint point(double buffer, double mvPerPh) {
        double mv = offsetMv - mvPerPh * (buffer - 7);
        return new CalibrationPoint(buffer, "pH", Math.round(mv * 10) / 10.0, "mV");
    }

    void calibrateOxygen(LocalDate day, Diary diary) {
        double seen = Math.round(AIR_MG_L * oxygenShare * 100) / 100.0;
        diary.enter(new Calibrate(
                Diary.at(day, 15, 40),
                "fish-do",
                "in moist air",
                List.of(new CalibrationPoint(AIR_MG_L, "mg/L", seen, "mg/L")),
                20));
        oxygenShare = 1;
    }
}
