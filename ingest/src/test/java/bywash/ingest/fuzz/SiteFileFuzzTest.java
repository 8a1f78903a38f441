package bywash.ingest.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.ingest.site.SiteProblem;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever stands in a site file, it is good, or every fault has a line and plain words. */
class SiteFileFuzzTest {
    private static final int CASES = 1_000 * Integer.getInteger("fuzz.times", 1);

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void everyTextIsGoodOrToldWhatIsWrong(long seed) {
        Mangler mangler = new Mangler(seed);
        int good = 0;
        for (int i = 0; i < CASES; i++) {
            String text = mangler.below(20) == 0
                    ? new String(mangler.noise(500), StandardCharsets.UTF_8)
                    : mangler.mangle(PayloadFuzzTest.siteText());
            good += good(text) ? 1 : 0;
        }
        assertTrue(good > 0 && good < CASES, "all alike: " + good);
    }

    private static boolean good(String text) {
        SiteFileResult result = SiteFileReader.read(text, "site.yaml");
        if (result instanceof SiteFileResult.Faulty faulty) {
            assertFalse(faulty.problems().isEmpty(), "faulty without a fault");
            for (SiteProblem problem : faulty.problems()) {
                assertTrue(problem.line() >= 1, problem::toString);
                Said.plainly(problem.what());
                Said.plainly(problem.right());
            }
            return false;
        }
        return true;
    }

    /** Nine levels of nine aliases each: a thousand million nodes when unrolled. */
    @Test
    void aFileThatUnrollsWithoutEndIsRefusedSoon() {
        StringBuilder text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 10; i++) {
            text.append(
                    "a%d: &a%d [%s]\n".formatted(i, i, "*a%d,".formatted(i - 1).repeat(9)));
        }
        text.append("vessels: *a9\nprobes: *a9\n");
        Assertions.assertTimeoutPreemptively(
                Duration.ofSeconds(10), () -> assertFalse(good(text.toString()), "taken as good"));
    }

    @Test
    void aFileNestedWithoutEndIsRefused() {
        assertFalse(good("vessels: " + "[".repeat(400_000)));
        assertFalse(good("{a: ".repeat(100_000)));
    }
}
