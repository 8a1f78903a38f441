package bywash.rules.husbandry.probes;

import bywash.rules.text.Sentence;
import bywash.rules.water.PhCalibration.Verdict;
import java.time.Instant;

/**
 * What one calibration found.
 *
 * @param slopePercent of the ideal slope, or of reading against standard, %; NaN where one point of this kind tells none
 * @param offset potential at pH 7 (mV) for a pH probe, else reading less standard where the reading is nearest to it
 * @param offsetUnit unit of the offset
 * @param error what the readings were off before it was adjusted, unit of the quantity; NaN where not known
 */
public record CalibrationResult(
        Instant at, double slopePercent, double offset, String offsetUnit, double error, Verdict verdict) {

    /** In words with its figures. */
    public String words() {
        String slope = Double.isNaN(slopePercent) ? "" : Sentence.of("slope %.1f %%, ", slopePercent);
        return Sentence.of("%soffset %+.2f %s: %s", slope, offset, offsetUnit, verdict.words());
    }
}
