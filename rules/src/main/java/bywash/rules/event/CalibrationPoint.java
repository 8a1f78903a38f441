package bywash.rules.event;

/**
 * One standard and what the probe showed in it.
 *
 * @param standard value of the standard, in {@code standardUnit}
 * @param reading what the probe showed, in {@code readingUnit}
 * @param standardUnit pH, mV, mg/L, Cel, uS/cm or mm
 * @param readingUnit the same, or mV for the raw potential of a pH electrode
 */
public record CalibrationPoint(double standard, String standardUnit, double reading, String readingUnit) {
    public CalibrationPoint {
        if (!Double.isFinite(standard) || !Double.isFinite(reading)) {
            throw new IllegalArgumentException(
                    "calibration point: " + standard + " and " + reading + " must be finite");
        }
    }
}
