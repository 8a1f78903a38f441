package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.RampGlr.Candidate;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The likelihood ratio finds a change that is in the books: the flow of the Nile at Aswan fell after 1898 (G. W. Cobb,
 * 1978, Biometrika 65, 243-251; 95 % interval 1895 to 1902 by the method of Bai and Perron). The summed flow is given as
 * the volume: a change of mean flow is a ramp in it.
 */
class PublishedChangeTest {
    private static final double MEAN_BEFORE = 1097.75;
    private static final double SD = 127.6737;

    private static List<double[]> nile() throws IOException {
        List<double[]> years = new ArrayList<>();
        var stream = Objects.requireNonNull(PublishedChangeTest.class.getResourceAsStream("/published/nile.csv"));
        try (Reader in = new InputStreamReader(stream, StandardCharsets.UTF_8);
                BufferedReader lines = new BufferedReader(in)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (Character.isDigit(line.charAt(0))) {
                    String[] cells = line.split(",", -1);
                    years.add(new double[] {Double.parseDouble(cells[0]), Double.parseDouble(cells[1])});
                }
            }
        }
        return years;
    }

    /** A ratio whose innovations are the yearly flows less the mean before, in standard deviations. */
    private static RampGlr glr() {
        return new RampGlr(StrictMath.sqrt(60), 1);
    }

    @Test
    void theNilesFallIsFoundAtItsPublishedYear() throws IOException {
        List<double[]> years = nile();
        assertEquals(100, years.size());
        RampGlr glr = glr();
        double sum = 0;
        glr.add(1870, 0, 1e-6);
        double foundIn = Double.NaN;
        double onset = Double.NaN;
        for (double[] year : years) {
            sum += (year[1] - MEAN_BEFORE) / SD;
            glr.add(year[0], sum, 1e-6);
            Candidate fall = glr.best(false, 0);
            if (Double.isNaN(foundIn) && fall != null && fall.logRatio() > 8) {
                foundIn = year[0];
            }
            onset = year[0] == 1912 && fall != null ? fall.onsetMin() : onset;
        }
        assertTrue(foundIn > 1898 && foundIn <= 1904, "found in " + foundIn);
        assertEquals(1898, onset, 3);
        Candidate fall = glr.best(false, 0);
        assertNotNull(fall);
        assertEquals((849.97 - MEAN_BEFORE) / SD, fall.rateLMin(), 0.3);
        Candidate rise = glr.best(true, 0);
        assertTrue(rise == null || rise.logRatio() < fall.logRatio() / 4, "a rise is as likely");
    }

    @Test
    void withoutAChangeTheRatioIsThatOfOneFreeParameter() {
        SplittableRandom random = new SplittableRandom(7);
        int n = 4000;
        double sum = 0;
        double above = 0;
        for (int run = 0; run < n; run++) {
            RampGlr glr = glr();
            double volume = 0;
            glr.add(0, 0, 1e-6);
            for (int t = 1; t <= 20; t++) {
                volume += random.nextGaussian();
                glr.add(t, volume, 1e-6);
            }
            double twice = 2 * Objects.requireNonNull(glr.near(0)).logRatio();
            sum += twice;
            above += twice > 3.841 ? 1 : 0;
        }
        assertEquals(1, sum / n, 4 * StrictMath.sqrt(2.0 / n), "mean of chi squared with one degree of freedom");
        assertEquals(0.05, above / n, 4 * StrictMath.sqrt(0.05 * 0.95 / n), "its upper 5 % point is 3.841");
    }
}
