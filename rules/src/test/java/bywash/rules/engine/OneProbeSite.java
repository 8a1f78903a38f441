package bywash.rules.engine;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import java.time.ZoneOffset;
import java.util.List;

/** A site of one vessel with one probe. */
final class OneProbeSite {
    private OneProbeSite() {}

    static Site of(Vessel vessel, Probe probe) {
        return new Site(
                "Test",
                "test",
                ZoneOffset.UTC,
                0,
                Stocking.FISH,
                Units.METRIC,
                new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11),
                List.of(vessel),
                List.of(probe),
                List.of());
    }
}
