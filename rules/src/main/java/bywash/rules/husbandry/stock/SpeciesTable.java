package bywash.rules.husbandry.stock;

import bywash.rules.site.Band;
import bywash.rules.site.Need;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.SpeciesBand;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The species built in, each figure with its source. A site file may add its own or change these.
 *
 * <p>FAO 589: C. Somerville and others, 2014, Small-scale aquaponic food production, FAO Fisheries and Aquaculture Technical
 * Paper 589, table 7.1 (species), table 3.1 (warm- and cold-water fish), section 7.4 (density). Table 3.1 and the tilapia's temperatures
 * were read in public copies; table 7.1 and the density are from memory: to be confirmed against the source. No species here has its own limit for chlorine:
 * acute values (ChlorineLimit) kill half the fish and are no limit to keep them under, so the general criterion counts.
 */
public final class SpeciesTable {
    private static final double NONE = Double.POSITIVE_INFINITY;
    private static final String FAO = "FAO 589 (2014) table 7.1, from memory";
    private static final String FAO_READ = "FAO 589 (2014) ch. 7, read in a public copy";
    private static final String GROUP = "FAO 589 (2014) table 3.1, read in a public copy";
    private static final String GUIDE = "FAO 589 (2014): 10 to 20 kg/m3 for small sites, from memory";
    private static final String TIMMONS = "Timmons and Ebeling (2007), long exposure, read as quoted";
    private static final String EIFAC =
            "EIFAC (1973): 0.025 mg/L NH3 for salmonids, from memory; long-term effects on trout fry at 0.022 mg/L NH3, read in an ECHA dossier";

    private static final List<Species> BUILT_IN = List.of(
            new Species(
                    "nile-tilapia",
                    with(
                            warm(2, 28, 32),
                            at(Need.TEMPERATURE, 14, 36, FAO_READ),
                            at(Need.BEST_TEMPERATURE, 27, 30, FAO_READ),
                            at(Need.FEEDING_TEMPERATURE, 17, 36, FAO_READ),
                            at(Need.OXYGEN, 4, NONE, GROUP))),
            new Species(
                    "common-carp",
                    with(
                            warm(1, 30, 38),
                            at(Need.TEMPERATURE, 4, 34, FAO),
                            at(Need.BEST_TEMPERATURE, 25, 30, FAO),
                            at(Need.OXYGEN, 4, NONE, GROUP))),
            new Species(
                    "channel-catfish",
                    with(
                            warm(1, 25, 36),
                            at(Need.TEMPERATURE, 5, 34, FAO),
                            at(Need.BEST_TEMPERATURE, 24, 30, FAO),
                            at(Need.OXYGEN, 3, NONE, FAO))),
            new Species(
                    "barramundi",
                    with(
                            warm(1, 38, 45),
                            at(Need.TEMPERATURE, 18, 34, FAO),
                            at(Need.BEST_TEMPERATURE, 26, 29, FAO),
                            at(Need.OXYGEN, 4, NONE, GROUP))),
            new Species("rainbow-trout", trout()));

    private SpeciesTable() {}

    /** The built-in species, in a fixed order. */
    public static List<Species> builtIn() {
        return BUILT_IN;
    }

    /** A species by its word: the site file's own first, else built in. */
    public static Optional<Species> find(Site site, String id) {
        return site.species().stream()
                .filter(s -> s.id().equals(id))
                .findFirst()
                .or(() -> BUILT_IN.stream().filter(s -> s.id().equals(id)).findFirst());
    }

    /** The words of all species of a site, its own first. */
    public static List<String> ids(Site site) {
        return Stream.concat(site.species().stream(), BUILT_IN.stream())
                .map(Species::id)
                .distinct()
                .toList();
    }

    /** The same as one text. */
    public static String words(Site site) {
        return String.join(", ", ids(site));
    }

    private static List<SpeciesBand> warm(double tanMgL, double proteinLow, double proteinHigh) {
        return List.of(
                at(Need.PH, 6, 8.5, GROUP),
                at(Need.TOTAL_AMMONIA, 0, tanMgL, FAO),
                at(Need.UNIONISED_AMMONIA, 0, 0.05, TIMMONS),
                at(Need.NITRITE, 0, 1, GROUP),
                at(Need.NITRATE, 0, 400, GROUP),
                at(Need.PROTEIN, proteinLow, proteinHigh, FAO),
                at(Need.DENSITY, 0, 20, GUIDE));
    }

    private static List<SpeciesBand> trout() {
        return List.of(
                at(Need.TEMPERATURE, 10, 18, GROUP),
                at(Need.BEST_TEMPERATURE, 14, 16, FAO),
                at(Need.PH, 6, 8.5, GROUP),
                at(Need.OXYGEN, 6, NONE, GROUP),
                at(Need.TOTAL_AMMONIA, 0, 0.5, FAO),
                at(Need.UNIONISED_AMMONIA, 0, 0.02, EIFAC),
                at(Need.NITRITE, 0, 0.1, GROUP),
                at(Need.NITRATE, 0, 400, GROUP),
                at(Need.PROTEIN, 40, 45, "FAO 589 (2014) table 7.1: about 42 %, from memory"),
                at(Need.DENSITY, 0, 20, GUIDE));
    }

    private static SpeciesBand at(Need need, double low, double high, String source) {
        return new SpeciesBand(need, new Band(low, high), source);
    }

    private static List<SpeciesBand> with(List<SpeciesBand> group, SpeciesBand... own) {
        List<SpeciesBand> bands = new ArrayList<>(List.of(own));
        bands.addAll(group);
        return bands;
    }
}
