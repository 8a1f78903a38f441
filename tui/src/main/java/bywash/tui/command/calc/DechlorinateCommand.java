package bywash.tui.command.calc;

import bywash.rules.text.Names;
import bywash.rules.water.DechlorinationDose;
import bywash.rules.water.Dechlorinator;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What to weigh out to take the chlorine out of a volume. */
@Command(
        name = "dechlorinate",
        description = "Mass of a chemical that takes the chlorine out of a volume, and its side effects.")
final class DechlorinateCommand extends Calculation {
    @Option(names = "--agent", description = "sodium-thiosulfate, ascorbic-acid and others; a wrong one lists them.")
    private @Nullable String agent;

    @Option(names = "--volume", description = "Volume of water, as in \"800 L\" or \"211 gal\".")
    private @Nullable String volume;

    @Option(names = "--residual", description = "Total residual chlorine, as in \"0.9 mg/L\".")
    private @Nullable String residual;

    @Option(
            names = "--strength",
            description = "Pure chemical in the product, from the label, as in \"99 %%\"; as usually sold without it.")
    private @Nullable String strength;

    @Option(
            names = "--excess",
            description = "Margin over the reaction's need, as in \"10 %%\", also taken without it.")
    private @Nullable String excess;

    @Option(names = "--chloramine", description = "The residual is chloramine.")
    private boolean chloramine;

    @Override
    Answer answer() {
        Dechlorinator chosen = Typed.word("--agent", agent, Dechlorinator.values(), Dechlorinator::word);
        DechlorinationDose.Water water = new DechlorinationDose.Water(
                Typed.measure("--volume", volume, Dimension.VOLUME),
                Typed.measure("--residual", residual, Dimension.CONCENTRATION),
                chloramine);
        double label = Typed.strength(strength, chosen.word());
        double margin = Typed.measureOr("--excess", excess, Dimension.PERCENT, 10);
        DechlorinationDose dose = DechlorinationDose.of(water, chosen, label, margin);
        Answer answer = new Answer("Dechlorination with " + Names.words(chosen.word()))
                .number("volume", water.volumeL(), "L")
                .number("residual", water.residualMgL(), "mg/L")
                .number("strength", label, "%")
                .number("excess", margin, "%")
                .number("weigh out", dose.massG(), "g")
                .number("oxygen the excess may take", dose.oxygenTakenMgL(), "mg/L")
                .number("alkalinity used", dose.alkalinityUsedMgL(), "mg/L as CaCO3")
                .number("ammonia set free", dose.ammoniaReleasedMgL(), "mg/L as N");
        Cautions.strength(answer, strength, chosen.word());
        if (chloramine) {
            answer.remark("The ammonia of chloramine stays in the water: let the filter or a cycle take it first.");
        }
        answer.source(
                "stoichiometry with IUPAC weights; field doses of the AWWA field guide, table 7-2, lie within 12 %");
        return Cautions.dechlorination(answer);
    }
}
