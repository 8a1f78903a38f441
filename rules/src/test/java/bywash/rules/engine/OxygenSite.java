package bywash.rules.engine;

import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;

/** A site of one fish tank with one oxygen probe. */
final class OxygenSite {
    private OxygenSite() {}

    static Site site() {
        return OneProbeSite.of(
                new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null, 1),
                new Probe("do", "fish-tank", Quantity.DISSOLVED_OXYGEN, null, Duration.ofSeconds(30)));
    }
}
