package bywash.tui.command.calc;

import bywash.rules.water.AmmoniaCriteria;
import bywash.rules.water.UnionisedAmmonia;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How much of the ammonia is toxic, and what the criteria allow. */
@Command(name = "ammonia", description = "Un-ionised ammonia, and the EPA 2013 criteria for the pH and temperature.")
final class AmmoniaCommand extends Calculation {
    @Option(names = "--tan", description = "Total ammonia nitrogen, as in \"0.5 mg/L\".")
    private @Nullable String tan;

    @Option(names = "--ph", description = "pH, as in 7.2.")
    private @Nullable String ph;

    @Option(names = "--temperature", description = "Water temperature, as in \"22 Cel\".")
    private @Nullable String temperature;

    @Override
    Answer answer() {
        double total = Typed.measure("--tan", tan, Dimension.CONCENTRATION);
        double p = Typed.measure("--ph", ph, Dimension.PH);
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        Answer answer = new Answer("Ammonia")
                .number("total ammonia nitrogen", total, "mg/L as N")
                .number("pH", p, "")
                .number("temperature", t, "Cel")
                .number("un-ionised share", 100 * UnionisedAmmonia.share(p, t), "%")
                .number("un-ionised ammonia", UnionisedAmmonia.unionisedMgL(total, p, t), "mg/L as N")
                .source("Emerson and others 1975, J. Fish. Res. Board Can. 32:2379");
        if (p < 6.5 || p > 9 || t > 30) {
            return answer.remark("The EPA criteria hold from pH 6.5 to 9 and 0 to 30 Cel, so none is given here.");
        }
        return answer.number("acute criterion, no trout", AmmoniaCriteria.acuteWithoutTrout(p, t), "mg/L as N")
                .number("acute criterion, trout", AmmoniaCriteria.acuteWithTrout(p, t), "mg/L as N")
                .number("chronic criterion", AmmoniaCriteria.chronic(p, t), "mg/L as N")
                .number("highest 4-day average", AmmoniaCriteria.highestFourDays(p, t), "mg/L as N")
                .remark("Criteria are for total ammonia nitrogen: acute a 1-hour, chronic a 30-day average.")
                .source("US EPA 2013, EPA-822-R-13-001");
    }
}
