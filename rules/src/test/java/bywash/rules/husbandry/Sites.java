package bywash.rules.husbandry;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;

/** An invented site for the tests of husbandry: 1500 L of fish, 600 L of sump, two beds. */
public final class Sites {
    public static final Instant START = Instant.parse("2026-03-01T08:00:00Z");

    private Sites() {}

    public static Instant day(double days) {
        return START.plusSeconds(Math.round(days * 86_400));
    }

    public static Site site() {
        Mains mains = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
        List<Vessel> vessels = List.of(
                new Vessel("sump", VesselRole.SUMP, null, 600, Double.NaN, null),
                new Vessel("reserve", VesselRole.RESERVE, null, 1000, Double.NaN, "sump"),
                new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null),
                new Vessel("bed-1", VesselRole.GROW_BED, null, 180, Double.NaN, null),
                new Vessel("bed-2", VesselRole.GROW_BED, null, 180, Double.NaN, null));
        List<Probe> probes = List.of(
                probe("fish-ph", Quantity.PH),
                probe("fish-temp", Quantity.TEMPERATURE),
                probe("fish-do", Quantity.DISSOLVED_OXYGEN),
                probe("fish-orp", Quantity.ORP));
        return new Site(
                "Test", "test", ZoneOffset.UTC, 85, Stocking.FISH, Units.METRIC, mains, vessels, probes, List.of());
    }

    /** The same with a species of its own. */
    public static Site with(Species species) {
        Site s = site();
        return new Site(
                s.name(),
                s.id(),
                s.timeZone(),
                s.elevationM(),
                s.stocking(),
                s.units(),
                s.mains(),
                s.vessels(),
                s.probes(),
                s.limits(),
                List.of(species));
    }

    private static Probe probe(String id, Quantity quantity) {
        return new Probe(id, "fish-tank", quantity, null, Duration.ofSeconds(30));
    }
}
