package bywash.rules.husbandry.stock;

import bywash.rules.site.Need;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.text.Names;
import bywash.rules.water.ChlorineLimit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The limits that alarms on chlorine and ammonia hold the water against: where a species in the system has its own figure, that
 * counts, the strictest of several; a species without one counts with the general criterion.
 *
 * @param acuteUgL total residual chlorine, one hour, ug/L
 * @param chronicUgL total residual chlorine, four days, ug/L
 * @param chlorineOf whose it is, with its source
 * @param ownChlorine whether it is a species' own
 * @param unionisedMgL un-ionised ammonia, mg/L as N
 * @param unionisedOf whose it is, with its source
 */
public record SpeciesLimits(
        double acuteUgL,
        double chronicUgL,
        String chlorineOf,
        boolean ownChlorine,
        double unionisedMgL,
        String unionisedOf) {
    private static final double GENERAL_ACUTE = ChlorineLimit.EPA_ACUTE.limitUgL();
    private static final double GENERAL_CHRONIC = ChlorineLimit.EPA_CHRONIC.limitUgL();

    /** From which gills are damaged, mg/L as N: R. Francis-Floyd and others, University of Florida IFAS publication FA-16, from memory. */
    public static final double GENERAL_UNIONISED_MG_L = 0.05;

    /** What counts without any species on record. */
    public static final SpeciesLimits GENERAL = new SpeciesLimits(
            GENERAL_ACUTE,
            GENERAL_CHRONIC,
            "general, US EPA 1985",
            false,
            GENERAL_UNIONISED_MG_L,
            "general, IFAS FA-16");

    /** @param species with fish in the system */
    public static SpeciesLimits of(List<Species> species) {
        SpeciesLimits limits = GENERAL;
        Optional<Species> chlorine = strictest(species, Need.CHLORINE, GENERAL_ACUTE);
        if (chlorine.isPresent() && own(chlorine.get(), Need.CHLORINE)) {
            double most = chlorine.get().most(Need.CHLORINE);
            limits = new SpeciesLimits(
                    most,
                    Math.min(GENERAL_CHRONIC, most),
                    words(chlorine.get(), Need.CHLORINE),
                    true,
                    limits.unionisedMgL(),
                    limits.unionisedOf());
        }
        Optional<Species> ammonia = strictest(species, Need.UNIONISED_AMMONIA, GENERAL_UNIONISED_MG_L);
        if (ammonia.isPresent() && own(ammonia.get(), Need.UNIONISED_AMMONIA)) {
            limits = new SpeciesLimits(
                    limits.acuteUgL(),
                    limits.chronicUgL(),
                    limits.chlorineOf(),
                    limits.ownChlorine(),
                    ammonia.get().most(Need.UNIONISED_AMMONIA),
                    words(ammonia.get(), Need.UNIONISED_AMMONIA));
        }
        return limits;
    }

    /** Of the species of cohorts that have fish. */
    public static SpeciesLimits of(Site site, List<CohortStatus> cohorts) {
        return of(cohorts.stream()
                .filter(c -> c.count() > 0)
                .flatMap(c -> SpeciesTable.find(site, c.species()).stream())
                .toList());
    }

    private static boolean own(Species species, Need need) {
        return Double.isFinite(species.most(need));
    }

    private static double limit(Species species, Need need, double general) {
        return own(species, need) ? species.most(need) : general;
    }

    /** The first of the strictest. */
    private static Optional<Species> strictest(List<Species> species, Need need, double general) {
        Species best = null;
        for (Species s : species) {
            if (best == null || limit(s, need, general) < limit(best, need, general)) {
                best = s;
            }
        }
        return Optional.ofNullable(best);
    }

    private static String words(Species species, Need need) {
        return Names.species(species.id()) + ", "
                + species.band(need).map(b -> b.source()).orElse("").strip();
    }

    /** The chlorine limit in words with its figures. */
    public String chlorineWords() {
        return String.format(Locale.ROOT, "acute %.0f, chronic %.0f ug/L (%s)", acuteUgL, chronicUgL, chlorineOf);
    }
}
