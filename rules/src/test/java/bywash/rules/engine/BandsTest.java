package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Band;
import bywash.rules.site.Limit;
import bywash.rules.site.Need;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.SpeciesBand;
import bywash.rules.site.Stocking;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class BandsTest {
    private static final double NONE = Double.POSITIVE_INFINITY;
    private static final Vessel TANK = new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null, 1);
    private static final Vessel RESERVE =
            new Vessel("reserve", VesselRole.RESERVE, null, 800, Double.NaN, "fish-tank", 1);

    private static Probe probe(Vessel vessel, Quantity quantity) {
        return new Probe("p", vessel.id(), quantity, null, Duration.ofSeconds(30));
    }

    private static @Nullable Band of(Quantity quantity, Stocking stocking, Species... fish) {
        Probe probe = probe(TANK, quantity);
        Bands bands = new Bands(OneProbeSite.of(TANK, probe));
        bands.fish(List.of(fish));
        return bands.of(probe, stocking);
    }

    @Test
    void builtInBandsDependOnWhetherFishAreThere() {
        assertEquals(new Band(6.2, 7.4), of(Quantity.PH, Stocking.FISH));
        assertEquals(new Band(5.5, 7.0), of(Quantity.PH, Stocking.FISHLESS));
        assertEquals(new Band(12, 30), of(Quantity.TEMPERATURE, Stocking.FISH));
        assertEquals(new Band(5, 32), of(Quantity.TEMPERATURE, Stocking.FISHLESS));
        assertEquals(new Band(5, NONE), of(Quantity.DISSOLVED_OXYGEN, Stocking.FISH));
        assertEquals(new Band(3, NONE), of(Quantity.DISSOLVED_OXYGEN, Stocking.FISHLESS));
        for (Quantity none :
                List.of(Quantity.ORP, Quantity.LEVEL, Quantity.CONDUCTIVITY, Quantity.FLOW, Quantity.STATE)) {
            assertNull(of(none, Stocking.FISH), none.word());
        }
    }

    @Test
    void aReserveHasNone() {
        Probe probe = probe(RESERVE, Quantity.PH);
        assertNull(new Bands(OneProbeSite.of(RESERVE, probe)).of(probe, Stocking.FISH));
    }

    @Test
    void theSiteFileHasTheLastWord() {
        Probe probe = probe(TANK, Quantity.PH);
        Site site = OneProbeSite.of(TANK, probe);
        Band set = new Band(6.4, 6.9);
        Bands bands = new Bands(new Site(
                site.name(),
                site.id(),
                site.timeZone(),
                site.elevationM(),
                site.stocking(),
                site.units(),
                site.mains(),
                site.vessels(),
                site.probes(),
                List.of(new Limit("fish-tank", Quantity.PH, set), new Limit("sump", Quantity.PH, new Band(5, 8)))));
        bands.fish(SpeciesTable.builtIn());
        assertEquals(set, bands.of(probe, Stocking.FISH));
        assertEquals(set, bands.of(probe, Stocking.FISHLESS));
    }

    private static Species species(String id, Need need, double low, double high) {
        return new Species(id, List.of(new SpeciesBand(need, new Band(low, high), "invented")));
    }

    @Test
    void theStrictestSpeciesOnRecordCounts() {
        Species warm = species("warm", Need.TEMPERATURE, 20, 34);
        Species cool = species("cool", Need.TEMPERATURE, 8, 26);
        assertEquals(new Band(20, 26), of(Quantity.TEMPERATURE, Stocking.FISH, warm, cool));
        assertEquals(new Band(5, 32), of(Quantity.TEMPERATURE, Stocking.FISHLESS, warm, cool), "no fish are in it");
        assertEquals(new Band(5, NONE), of(Quantity.DISSOLVED_OXYGEN, Stocking.FISH, warm), "nothing is told of it");
        assertEquals(
                new Band(6.5, NONE),
                of(Quantity.DISSOLVED_OXYGEN, Stocking.FISH, species("trout", Need.OXYGEN, 6.5, NONE)));
    }

    @Test
    void ofPhTheyShareThePartWithTheBuiltInBand() {
        assertEquals(new Band(6.8, 7.4), of(Quantity.PH, Stocking.FISH, species("hard", Need.PH, 6.8, 8.5)));
        assertEquals(
                new Band(6.2, 7.4),
                of(Quantity.PH, Stocking.FISH, species("soda", Need.PH, 8, 9)),
                "where they share none the built-in one stays");
    }
}
