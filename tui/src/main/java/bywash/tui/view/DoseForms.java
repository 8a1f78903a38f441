package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.husbandry.bacteria.AmmoniaSource;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Names;
import bywash.rules.water.Dechlorinator;
import bywash.rules.water.LabelStrength;
import bywash.rules.water.PhReagent;
import bywash.tui.view.EventLog.Event;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Check of the form on a chemical added to the loop: to move the pH, to feed the bacteria, against chlorine. */
public final class DoseForms {
    static final double MOST_G = 20_000;
    /** About where the loop is; a strong acid or a base does the same at any pH near it. */
    private static final double NEUTRAL = 7;

    private static final String USUAL_CAUTIONS =
            "Follow the label, wear gloves and eye protection, never mix chemicals.";

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

    static Optional<AmmoniaSource> ammonia(String word) {
        return Stream.of(AmmoniaSource.values())
                .filter(s -> s.word().equals(word))
                .findFirst();
    }

    /** Fields: vessel, reagent, amount of product, strength, when. */
    public static FormCheck dose(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        String reagent = in.choice(1);
        double grams = filled.number(2);
        if (!(grams > 0 && grams <= MOST_G)) {
            in.problem("Amount: type grams, above 0 to 20000.");
        }
        double percent = in.strength(3, reagent);
        Instant at = in.when(4);
        Dose entry = new Dose(at, in.choice(0), reagent, grams, percent);
        in.warn(Doubts.of(frame, entry));
        in.warn(cautions(reagent));
        return in.done(Words.number(grams, 1) + " g of " + Names.words(reagent) + " entered; test in 2 h.", entry);
    }

    /** What is taken where the label was not read. */
    public static String strengthHint(String reagent) {
        return "by weight, from the label; open: " + LabelStrength.words(LabelStrength.usualPercent(reagent));
    }

    /** What the amount typed does to the loop, in words; empty while it is not known. */
    public static String effect(Frame frame, Filled filled) {
        String reagent = filled.text(1);
        double percent = LabelStrength.percent(reagent, filled.number(3));
        double pureG = filled.number(2) * percent / 100;
        double volumeL = frame.snapshot().systemVolume().likelyL();
        if (!(pureG > 0 && volumeL > 0)
                || !LabelStrength.problem(reagent, percent).isEmpty()) {
            return "";
        }
        String loop = " in the " + new DisplayUnits(frame.snapshot().site().units()).volume(volumeL) + " of the loop.";
        Optional<AmmoniaSource> source = ammonia(reagent);
        if (source.isPresent()) {
            double nitrogenG = pureG * source.get().nitrogenShare();
            return "That is " + Words.number(nitrogenG, 1) + " g of nitrogen: total ammonia up by "
                    + Words.number(1000 * nitrogenG / volumeL, 2) + " mg/L" + loop;
        }
        Optional<Dechlorinator> agent = Stream.of(Dechlorinator.values())
                .filter(d -> d.word().equals(reagent))
                .findFirst();
        if (agent.isPresent()) {
            double chlorine = 1000 * pureG / agent.get().mgPerMgCl2() / volumeL;
            return "That takes up to " + Words.number(chlorine, 2) + " mg/L of chlorine out" + loop;
        }
        return PhReagent.of(reagent)
                .map(r -> alkalinity(r.alkalinityMgL(pureG, volumeL, NEUTRAL)) + loop)
                .orElse("");
    }

    private static String alkalinity(double change) {
        return "That moves the alkalinity by about " + (change > 0 ? "+" : "") + Words.number(change, 1)
                + " mg/L as CaCO3";
    }

    /** What is to be minded with a chemical that was entered; empty where the entry is none of a chemical. */
    public static String cautions(OperatorEntry entry) {
        if (entry instanceof Dose dose) {
            return cautions(dose.reagent());
        }
        return entry instanceof BatchTreat treat && !Double.isNaN(treat.amountG()) ? USUAL_CAUTIONS : "";
    }

    /** What is to be minded with it. */
    public static String cautions(String reagent) {
        return ammonia(reagent)
                .map(AmmoniaSource::cautions)
                .orElseGet(() -> Stream.of(PhReagent.values())
                        .filter(r -> r.word().equals(reagent))
                        .findFirst()
                        .map(PhPlan::cautions)
                        .orElse(USUAL_CAUTIONS));
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
