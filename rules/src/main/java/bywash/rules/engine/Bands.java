package bywash.rules.engine;

import bywash.rules.site.Band;
import bywash.rules.site.Limit;
import bywash.rules.site.Need;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.site.VesselRole;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The good band of each probe: the site file's where it sets one, else built in. Built-in bands are common practice,
 * no source: pH 6.2 to 7.4 with fish and 5.5 to 7.0 for plants alone; oxygen at least 5 mg/L with fish, 3 without;
 * temperature 12 to 30 Cel with fish, 5 to 32 without. Oxidation potential has no citable range and no built-in band. Where fish
 * are on record, temperature and oxygen follow the strictest of their species, and pH the part of the band they share.
 */
final class Bands {
    private static final double NONE = Double.POSITIVE_INFINITY;
    private static final Band PH_FISH = new Band(6.2, 7.4);
    private static final Band PH_PLANTS = new Band(5.5, 7.0);
    private static final Band TEMPERATURE_FISH = new Band(12, 30);
    private static final Band TEMPERATURE_PLANTS = new Band(5, 32);
    private static final Band OXYGEN_FISH = new Band(5, NONE);
    private static final Band OXYGEN_PLANTS = new Band(3, NONE);

    private final Map<String, Band> bySite = new HashMap<>();
    private final Set<String> inReserve = new HashSet<>();
    private final Map<Quantity, Band> ofFish = new EnumMap<>(Quantity.class);

    Bands(Site site) {
        for (Probe probe : site.probes()) {
            for (Limit limit : site.limits()) {
                if (limit.vessel().equals(probe.vessel()) && limit.quantity() == probe.quantity()) {
                    bySite.putIfAbsent(probe.id(), limit.band());
                }
            }
            site.vessel(probe.vessel())
                    .filter(v -> v.role() == VesselRole.RESERVE)
                    .ifPresent(v -> inReserve.add(probe.id()));
        }
    }

    /** The species on record from here on. */
    void fish(List<Species> species) {
        ofFish.clear();
        for (Quantity quantity : List.of(Quantity.TEMPERATURE, Quantity.PH, Quantity.DISSOLVED_OXYGEN)) {
            Band band = builtIn(quantity, true);
            if (band != null && !species.isEmpty()) {
                ofFish.put(quantity, ofSpecies(quantity, band, species));
            }
        }
    }

    @Nullable
    Band of(Probe probe, Stocking stocking) {
        Band set = bySite.get(probe.id());
        if (set != null) {
            return set;
        }
        Band band = inReserve.contains(probe.id()) ? null : builtIn(probe.quantity(), stocking == Stocking.FISH);
        return band == null || stocking == Stocking.FISHLESS ? band : ofFish.getOrDefault(probe.quantity(), band);
    }

    private static Band ofSpecies(Quantity quantity, Band band, List<Species> species) {
        double low = Double.NEGATIVE_INFINITY;
        double high = NONE;
        Need need =
                quantity == Quantity.PH ? Need.PH : quantity == Quantity.TEMPERATURE ? Need.TEMPERATURE : Need.OXYGEN;
        for (Species s : species) {
            low = Math.max(low, s.least(need));
            high = Math.min(high, s.most(need));
        }
        if (quantity == Quantity.PH) {
            low = Math.max(low, band.low());
            high = Math.min(high, band.high());
        }
        boolean told = !Double.isInfinite(low) || !Double.isInfinite(high);
        return told && low < high ? new Band(low, high) : band;
    }

    private static @Nullable Band builtIn(Quantity quantity, boolean fish) {
        return switch (quantity) {
            case PH -> fish ? PH_FISH : PH_PLANTS;
            case TEMPERATURE -> fish ? TEMPERATURE_FISH : TEMPERATURE_PLANTS;
            case DISSOLVED_OXYGEN -> fish ? OXYGEN_FISH : OXYGEN_PLANTS;
            case LEVEL, ORP, CONDUCTIVITY, FLOW, STATE -> null;
        };
    }

    /** How far inside the band a value must come back before its alarm clears. */
    static double deadband(Quantity quantity) {
        return switch (quantity) {
            case PH -> 0.05;
            case TEMPERATURE -> 0.3;
            case DISSOLVED_OXYGEN -> 0.2;
            case ORP -> 10;
            case LEVEL -> 5;
            case CONDUCTIVITY -> 20;
            case FLOW -> 0.2;
            case STATE -> 0;
        };
    }
}
