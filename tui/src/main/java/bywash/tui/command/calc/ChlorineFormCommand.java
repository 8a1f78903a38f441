package bywash.tui.command.calc;

import bywash.rules.water.HypochlorousAcid;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How much of the free chlorine is hypochlorous acid. */
@Command(
        name = "chlorine-form",
        description = "Share of free chlorine that is hypochlorous acid, and how toxic the whole is.")
final class ChlorineFormCommand extends Calculation {
    @Option(names = "--ph", description = "pH, as in 7.2.")
    private @Nullable String ph;

    @Option(names = "--temperature", description = "Water temperature, as in \"22 Cel\".")
    private @Nullable String temperature;

    @Override
    Answer answer() {
        double p = Typed.measure("--ph", ph, Dimension.PH);
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        double share = HypochlorousAcid.share(p, t);
        HypochlorousAcid.ToxicShare toxic = HypochlorousAcid.toxicShare(p, t);
        return new Answer("Forms of free chlorine")
                .number("pH", p, "")
                .number("temperature", t, "Cel")
                .number("hypochlorous acid", 100 * share, "%")
                .number("hypochlorite", 100 * (1 - share), "%")
                .number("toxic share, low end", 100 * toxic.low(), "%")
                .number("toxic share, high end", 100 * toxic.high(), "%")
                .remark("Toxic share: against the same amount all as hypochlorous acid.")
                .source("Morris 1966, J. Phys. Chem. 70:3798")
                .source("EPRI 1982, EA-2481: hypochlorite a quarter to a third as toxic")
                .caution(Cautions.TEST);
    }
}
