package bywash.rules.site;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * One body of recirculating water with its vessels, probes and mains supply.
 *
 * @param elevationM above sea level, m, -500 to 5000
 * @param vessels in the order of the site file
 * @param probes in the order of the site file
 * @param species the site's own, before those built in
 */
public record Site(
        String name,
        String id,
        ZoneId timeZone,
        double elevationM,
        Stocking stocking,
        Units units,
        Mains mains,
        List<Vessel> vessels,
        List<Probe> probes,
        List<Limit> limits,
        List<Species> species) {
    /** A site with the built-in species only. */
    public Site(
            String name,
            String id,
            ZoneId timeZone,
            double elevationM,
            Stocking stocking,
            Units units,
            Mains mains,
            List<Vessel> vessels,
            List<Probe> probes,
            List<Limit> limits) {
        this(name, id, timeZone, elevationM, stocking, units, mains, vessels, probes, limits, List.of());
    }

    public Site {
        vessels = List.copyOf(vessels);
        probes = List.copyOf(probes);
        limits = List.copyOf(limits);
        species = List.copyOf(species);
    }

    public Optional<Vessel> vessel(String id) {
        for (Vessel vessel : vessels) {
            if (vessel.id().equals(id)) {
                return Optional.of(vessel);
            }
        }
        return Optional.empty();
    }

    /** Whether this is a reserve of the site, whose water stands apart; false for a vessel that the site has not. */
    public boolean isReserve(String vesselId) {
        return vessel(vesselId).map(Vessel::role).orElse(null) == VesselRole.RESERVE;
    }

    public Optional<Probe> probe(String id) {
        for (Probe probe : probes) {
            if (probe.id().equals(id)) {
                return Optional.of(probe);
            }
        }
        return Optional.empty();
    }

    public Optional<Probe> probe(String vesselId, Quantity quantity) {
        for (Probe probe : probes) {
            if (probe.quantity() == quantity && probe.vessel().equals(vesselId)) {
                return Optional.of(probe);
            }
        }
        return Optional.empty();
    }

    public List<Vessel> vessels(VesselRole role) {
        return vessels.stream().filter(v -> v.role() == role).toList();
    }
}
