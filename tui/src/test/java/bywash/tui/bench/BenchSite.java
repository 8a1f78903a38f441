package bywash.tui.bench;

import bywash.rules.site.Device;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.Box;
import bywash.rules.vessel.VerticalCylinder;
import bywash.samples.simulation.SiteModel;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** What the site file of a simulated variant would say. */
final class BenchSite {
    private BenchSite() {}

    static Site of(SiteModel model) {
        double side = StrictMath.sqrt(model.sumpM2()) * 1000;
        Box sump = new Box(side, side, 750);
        VerticalCylinder reserve = new VerticalCylinder(1100, 1200);
        List<Vessel> vessels = new ArrayList<>();
        vessels.add(new Vessel("sump", VesselRole.SUMP, sump, sump.volumeL(680), 680, null));
        vessels.add(new Vessel("reserve", VesselRole.RESERVE, reserve, reserve.volumeL(1100), 1100, "sump"));
        vessels.add(new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null));
        for (int i = 1; i <= model.beds().count(); i++) {
            vessels.add(new Vessel("bed-" + i, VesselRole.GROW_BED, null, 220, Double.NaN, null));
        }
        Duration every = Duration.ofSeconds(model.probe().everyS());
        List<Probe> probes = new ArrayList<>();
        probes.add(new Probe("sump-level", "sump", Quantity.LEVEL, null, every));
        probes.add(new Probe("reserve-level", "reserve", Quantity.LEVEL, null, every));
        if (model.pumpProbe()) {
            probes.add(new Probe("pump", "sump", Quantity.STATE, Device.PUMP, Duration.ofSeconds(30)));
        }
        Mains mains = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
        return new Site(
                "Bench", "bench", ZoneId.of("UTC"), 85, Stocking.FISH, Units.METRIC, mains, vessels, probes, List.of());
    }
}
