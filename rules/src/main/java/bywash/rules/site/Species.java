package bywash.rules.site;

import java.util.List;
import java.util.Optional;

/**
 * A kind of fish and what it needs.
 *
 * @param id its word in entries and site files, [a-z0-9-]+
 * @param bands at most one for each need
 */
public record Species(String id, List<SpeciesBand> bands) {
    public Species {
        bands = List.copyOf(bands);
        if (bands.stream().map(SpeciesBand::need).distinct().count() < bands.size()) {
            throw new IllegalArgumentException("species " + id + " has two bands for one need");
        }
    }

    /** The figure for a need with its source; empty where none is known. */
    public Optional<SpeciesBand> band(Need need) {
        return bands.stream().filter(b -> b.need() == need).findFirst();
    }

    /** Upper end of a need; infinite where none is known. */
    public double most(Need need) {
        return band(need).map(b -> b.band().high()).orElse(Double.POSITIVE_INFINITY);
    }

    /** Lower end of a need; minus infinity where none is known. */
    public double least(Need need) {
        return band(need).map(b -> b.band().low()).orElse(Double.NEGATIVE_INFINITY);
    }
}
