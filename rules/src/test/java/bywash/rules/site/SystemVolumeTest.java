package bywash.rules.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.vessel.Box;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class SystemVolumeTest {
    private static final Vessel SUMP = new Vessel("sump", VesselRole.SUMP, new Box(1200, 800, 750), 652.8, 680, null);
    private static final Vessel TANK = new Vessel("tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null);
    private static final Vessel BED = new Vessel("bed", VesselRole.GROW_BED, null, 180, Double.NaN, null);
    private static final Vessel RAFT = new Vessel("raft", VesselRole.GROW_BED, null, 180, Double.NaN, null, 1);
    private static final Vessel RESERVE = new Vessel("reserve", VesselRole.RESERVE, null, 900, Double.NaN, "sump");

    @Test
    void countsTheSumpAtItsLevelTheTankAtItsVolumeAndTheBedAtItsPores() {
        SystemVolume v = SystemVolume.of(site(SUMP, TANK, BED, RESERVE), w -> w == SUMP ? 350 : Double.NaN);
        assertEquals(336 + 1500 + 36, v.likelyL(), 1e-9);
        assertEquals(336 + 1350 + 7.2, v.lowL(), 1e-9);
        assertEquals(336 + 1575 + 72, v.highL(), 1e-9);
    }

    @Test
    void isWiderWithoutALevel() {
        SystemVolume known = SystemVolume.of(site(SUMP), w -> 350);
        SystemVolume blind = SystemVolume.of(site(SUMP));
        assertTrue(blind.lowL() < known.lowL() && blind.highL() > known.highL());
    }

    @Test
    void aBedWithoutMediaHoldsItsVolume() {
        assertEquals(180, SystemVolume.of(site(RAFT)).likelyL(), 1e-9);
    }

    @Test
    void isNeverNothing() {
        assertTrue(SystemVolume.of(site(RESERVE)).lowL() > 0);
    }

    private static Site site(Vessel... vessels) {
        Mains mains = new Mains(Disinfectant.CHLORINE, 1, 7.5, 100, 12);
        return new Site(
                "s",
                "s",
                ZoneOffset.UTC,
                0,
                Stocking.FISH,
                Units.METRIC,
                mains,
                List.of(vessels),
                List.of(),
                List.of());
    }
}
