package bywash.tui.view;

import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Band;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.site.SpeciesBand;
import bywash.rules.text.Names;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What the species here need, each figure's source named once, and which limit the alarms on chlorine and ammonia use. */
final class SpeciesView {
    private SpeciesView() {}

    /** Species with fish, in the order their cohorts came. */
    static List<Passage> from(Frame frame, List<CohortStatus> cohorts) {
        List<Species> species = cohorts.stream()
                .filter(c -> c.count() > 0)
                .flatMap(c -> SpeciesTable.find(frame.snapshot().site(), c.species()).stream())
                .distinct()
                .toList();
        List<Passage> out = new ArrayList<>();
        for (Species s : species) {
            out.add(Passage.plain(
                    "Needs",
                    Names.species(s.id()) + ": "
                            + s.bands().stream().map(SpeciesView::words).collect(Collectors.joining("; ")) + "."));
            out.add(Passage.plain(
                    "Sources",
                    s.bands().stream().map(SpeciesBand::source).distinct().collect(Collectors.joining("; ")) + "."));
        }
        if (!species.isEmpty()) {
            SpeciesLimits limits = SpeciesLimits.of(species);
            out.add(Passage.plain(
                    "Alarms",
                    "Chlorine is held against " + limits.chlorineWords() + ", un-ionised ammonia against "
                            + Words.number(limits.unionisedMgL(), 3) + " mg/L (" + limits.unionisedOf() + ")."));
        }
        return out;
    }

    /** Such as {@code temperature 14 to 36 Cel}. */
    static String words(SpeciesBand band) {
        Band b = band.band();
        String unit =
                band.need().unit().isEmpty() ? "" : " " + Names.unit(band.need().unit());
        String name = name(band.need());
        if (Double.isInfinite(b.high())) {
            return name + " at least " + plain(b.low()) + unit;
        }
        return b.low() == 0 || Double.isInfinite(b.low())
                ? name + " at most " + plain(b.high()) + unit
                : name + " " + plain(b.low()) + " to " + plain(b.high()) + unit;
    }

    private static String name(Need need) {
        return switch (need) {
            case PH -> "pH";
            case BEST_TEMPERATURE -> "best at";
            case FEEDING_TEMPERATURE -> "feeds at";
            case UNIONISED_AMMONIA -> "un-ionised ammonia";
            case TOTAL_AMMONIA -> "total ammonia";
            case TEMPERATURE, OXYGEN, NITRITE, NITRATE, CHLORINE, PROTEIN, DENSITY -> need.word();
        };
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Words.number(value, 0) : String.valueOf(value);
    }
}
