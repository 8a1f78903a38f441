package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.chlorine.ReserveBatch;
import bywash.rules.chlorine.ResidualTracker;
import bywash.rules.chlorine.Treatment;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.Box;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class BroughtTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final String AS_ITS_KIND = "";

    private final Mains mains = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
    private final ResidualTracker tracker = new ResidualTracker(site(mains));
    private final Brought brought = new Brought(mains, tracker);

    @ParameterizedTest
    @ValueSource(strings = {"mains", "outside", "unknown", "", "reserve"})
    void whatIsNotKnownIsMainsWater(String source) {
        assertEquals(AS_ITS_KIND, brought.consequence(source, T));
    }

    @Test
    void aBatchThatWasTestedFreeStillOverflows() {
        batch().filled(T, 500);
        batch().tested(T.plusSeconds(3600), 0);
        assertEquals(
                "Water of reserve was tested free of chlorine; but the vessel overflows, and reserve runs empty.",
                brought.consequence("reserve", T.plusSeconds(7200)));
        assertEquals(AS_ITS_KIND, brought.consequence("unknown", T.plusSeconds(7200)));
    }

    @Test
    void aTreatedBatchBringsWhatIsLeftInIt() {
        batch().filled(T, 500);
        batch().treated(T, Treatment.AERATED, Double.NaN);
        batch().tested(T.plusSeconds(7200), 0.3);
        String words = brought.consequence("reserve", T.plusSeconds(7200));
        assertTrue(
                words.matches(
                        "Water of reserve brings 0\\.2\\d to 0\\.3\\d mg/L of chlorine \\(filled 2 h 0 min ago, a test found chlorine; .*\\), and"
                                + " the vessel overflows\\."),
                words);
    }

    @Test
    void aNewFillingTakesTheTestAway() {
        batch().filled(T, 500);
        batch().tested(T.plusSeconds(3600), 0);
        batch().filled(T.plusSeconds(7200), 400);
        String words = brought.consequence("reserve", T.plusSeconds(7200));
        assertTrue(words.contains("not tested free"), words);
    }

    @Test
    void waterWithoutDisinfectantBurnsNoGills() {
        Mains none = new Mains(Disinfectant.NONE, 0, 7.4, 200, 10);
        String words = new Brought(none, new ResidualTracker(site(none))).consequence("outside", T);
        assertEquals(
                "By the site file the mains carries no disinfectant; but the vessel overflows, and temperature and pH"
                        + " move.",
                words);
    }

    private ReserveBatch batch() {
        return Objects.requireNonNull(tracker.batch("reserve"));
    }

    private static Site site(Mains mains) {
        Vessel sump = new Vessel("sump", VesselRole.SUMP, new Box(1200, 800, 700), 672, 650, null);
        Vessel reserve = new Vessel("reserve", VesselRole.RESERVE, null, 1000, Double.NaN, "sump");
        return new Site(
                "A",
                "a",
                ZoneOffset.UTC,
                0,
                Stocking.FISH,
                Units.METRIC,
                mains,
                List.of(sump, reserve),
                List.of(),
                List.of());
    }
}
