package bywash.rules.engine;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;

/** A site of one fish tank with one oxygen probe. */
final class OxygenSite {
    private OxygenSite() {}

    static Site site() {
        return new Site(
                "Test",
                "test",
                ZoneOffset.UTC,
                0,
                Stocking.FISH,
                Units.METRIC,
                new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11),
                List.of(new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null, 1)),
                List.of(new Probe("do", "fish-tank", Quantity.DISSOLVED_OXYGEN, null, Duration.ofSeconds(30))),
                List.of());
    }
}
