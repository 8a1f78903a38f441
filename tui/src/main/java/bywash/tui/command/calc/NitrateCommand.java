package bywash.tui.command.calc;

import bywash.rules.water.NitrateBalance;
import bywash.rules.water.Nitrification;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Where the nitrate is heading. */
@Command(
        name = "nitrate",
        description = "Nitrate over time from what is made, taken by plants and carried off with water.")
final class NitrateCommand extends Calculation {
    @Option(names = "--volume", description = "Volume of the system, as in \"2000 L\".")
    private @Nullable String volume;

    @Option(names = "--made", description = "Nitrate nitrogen made, as in \"3 g/d\".")
    private @Nullable String made;

    @Option(names = "--taken", description = "Nitrate nitrogen taken by plants, as in \"2 g/d\".")
    private @Nullable String taken;

    @Option(names = "--exchange", description = "Water replaced, as in \"50 L/d\"; none without it.")
    private @Nullable String exchange;

    @Option(names = "--now", description = "Nitrate nitrogen now, as in \"20 mg/L\"; none without it.")
    private @Nullable String now;

    @Option(names = "--time", description = "How far ahead, as in \"30 d\".")
    private @Nullable String time;

    @Override
    Answer answer() {
        NitrateBalance balance = new NitrateBalance(
                Typed.measure("--volume", volume, Dimension.VOLUME),
                Typed.measure("--made", made, Dimension.DAILY_MASS),
                Typed.measure("--taken", taken, Dimension.DAILY_MASS),
                Typed.measureOr("--exchange", exchange, Dimension.DAILY_FLOW, 0));
        double start = Typed.measureOr("--now", now, Dimension.CONCENTRATION, 0);
        double days = Typed.measure("--time", time, Dimension.TIME) / 24;
        double after = balance.afterMgL(start, days);
        return new Answer("Nitrate balance")
                .number("nitrate nitrogen now", start, "mg/L")
                .number("rise", balance.risePerDayMgL(start), "mg/L a day")
                .number("time", days, "d")
                .number("nitrate nitrogen then", after, "mg/L")
                .number("nitrate then, as NO3", after * Nitrification.NO3_PER_N, "mg/L")
                .number("nitrate nitrogen at rest", balance.atRestMgL(), "mg/L")
                .source("mass balance of a mixed system, gas losses left out");
    }
}
