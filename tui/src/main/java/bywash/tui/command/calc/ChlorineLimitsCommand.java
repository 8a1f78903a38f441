package bywash.tui.command.calc;

import bywash.rules.water.ChlorineLimit;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Published limits for chlorine, and how a residual stands to each. */
@Command(
        name = "chlorine-limits",
        description = "Published limits for chlorine with their averaging periods and sources.")
final class ChlorineLimitsCommand extends Calculation {
    @Option(names = "--residual", description = "Residual to hold against them, as in \"0.9 mg/L\".")
    private @Nullable String residual;

    @Override
    Answer answer() {
        Answer answer = new Answer("Limits for total residual chlorine");
        double typed = Typed.measureOr("--residual", residual, Dimension.CONCENTRATION, -1);
        if (residual != null) {
            if (!(typed >= 0 && typed <= 20)) {
                throw new IllegalArgumentException("--residual is \"" + residual + "\"; it must be from 0 to 20 mg/L");
            }
            answer.number("residual", typed * 1000, "ug/L");
        }
        for (ChlorineLimit limit : ChlorineLimit.values()) {
            String name = limit.name().toLowerCase(Locale.ROOT).replace('_', '-');
            answer.number(name, limit.limitUgL(), "ug/L");
            String above = typed * 1000 > limit.limitUgL() ? "EXCEEDED. " : "";
            answer.remark(name + ": " + above + limit.condition() + ". " + limit.source() + " ("
                    + limit.provenance().words() + ")");
        }
        return answer.source("named beside each limit").caution(Cautions.TEST).caution(Cautions.LICENCE);
    }
}
