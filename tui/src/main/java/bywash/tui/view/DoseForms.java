package bywash.tui.view;

import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.husbandry.bacteria.AmmoniaSource;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.site.Stocking;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.Dechlorinator;
import bywash.rules.water.PhReagent;
import bywash.tui.view.EventLog.Event;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Check of the form on a chemical added to the loop: to move the pH, to feed the bacteria, against chlorine. */
public final class DoseForms {
    private static final double MOST_G = 20_000;

    private DoseForms() {}

    /** Vessels of the loop; a reserve is treated by the form for batches. */
    public static List<String> vessels(Frame frame) {
        return frame.snapshot().site().vessels().stream()
                .filter(v -> v.role() != VesselRole.RESERVE)
                .map(Vessel::id)
                .toList();
    }

    /** All that may be dosed: acids and bases, ammonia, dechlorinators. */
    public static List<String> reagents() {
        Stream<String> adjusters = Stream.of(PhReagent.values()).map(PhReagent::word);
        Stream<String> ammonia = Stream.of(AmmoniaSource.values())
                .filter(s -> s != AmmoniaSource.PELLETS)
                .map(AmmoniaSource::word);
        Stream<String> dechlorinators = Stream.of(Dechlorinator.values()).map(Dechlorinator::word);
        return Stream.of(adjusters, ammonia, dechlorinators)
                .flatMap(s -> s)
                .distinct()
                .toList();
    }

    private static Optional<AmmoniaSource> ammonia(String word) {
        return Stream.of(AmmoniaSource.values())
                .filter(s -> s.word().equals(word))
                .findFirst();
    }

    /** Fields: vessel, reagent, amount of product, when. */
    public static FormCheck dose(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        String reagent = in.choice(1);
        double grams = filled.number(2);
        if (!(grams > 0 && grams <= MOST_G)) {
            in.problem("Amount: type grams, above 0 to 20000.");
        }
        Instant at = in.when(3);
        if (ammonia(reagent).isPresent() && frame.snapshot().stocking() == Stocking.FISH) {
            in.warn("Fish are on record: ammonia is never dosed with fish in the water.");
        }
        in.warn(cautions(reagent));
        return in.done(
                Words.number(grams, 1) + " g of " + reagent + " entered; test in 2 h.",
                new Dose(at, in.choice(0), reagent, grams));
    }

    private static String cautions(String reagent) {
        return ammonia(reagent)
                .map(AmmoniaSource::cautions)
                .orElseGet(() -> Stream.of(PhReagent.values())
                        .filter(r -> r.word().equals(reagent))
                        .findFirst()
                        .map(PhPlan::cautions)
                        .orElse("Follow the label, wear gloves and eye protection, never mix chemicals."));
    }

    /** The last dose of it on record. */
    public static String last(Frame frame, String reagent) {
        for (Event event : frame.log().newestFirst()) {
            if (event instanceof Event.Entry e
                    && e.entry() instanceof Dose dose
                    && dose.reagent().equals(reagent)) {
                return "last " + Words.number(dose.massG(), 1) + " g, " + Words.shortSpan(dose.at(), frame.at())
                        + " ago";
            }
        }
        return "none on record";
    }
}
