package bywash.tui.command.calc;

import bywash.rules.water.MixedTank;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The residual that mains water running in leaves in the system. */
@Command(
        name = "mains-in",
        description = "Residual in the system while mains water runs in, filling it or overflowing it.")
final class MainsInCommand extends Calculation {
    @Option(names = "--volume", description = "Volume of water at the start, as in \"2000 L\".")
    private @Nullable String volume;

    @Option(names = "--flow", description = "Mains water running in, as in \"4 L/min\".")
    private @Nullable String flow;

    @Option(names = "--residual", description = "Residual of the mains water, as in \"0.9 mg/L\".")
    private @Nullable String residual;

    @Option(names = "--time", description = "How long it runs, as in \"2 h\".")
    private @Nullable String time;

    @Option(names = "--loss", description = "Rate of loss in the system, as in \"0.5 1/h\"; none without it.")
    private @Nullable String loss;

    @Option(names = "--start", description = "Residual in the system at the start, as in \"5 ug/L\"; none without it.")
    private @Nullable String start;

    @Option(names = "--limit", description = "Limit to watch, as in \"19 ug/L\", also taken without it.")
    private @Nullable String limit;

    @Option(names = "--overflowing", description = "As much leaves over the overflow as runs in.")
    private boolean overflowing;

    @Override
    Answer answer() {
        MixedTank tank = new MixedTank(
                Typed.measure("--volume", volume, Dimension.VOLUME),
                Typed.measureOr("--start", start, Dimension.CONCENTRATION, 0));
        MixedTank.Inflow inflow = new MixedTank.Inflow(
                Typed.measure("--flow", flow, Dimension.FLOW),
                Typed.measure("--residual", residual, Dimension.CONCENTRATION));
        double minutes = 60 * Typed.measure("--time", time, Dimension.TIME);
        double rate = Typed.measureOr("--loss", loss, Dimension.RATE, 0);
        double watched = Typed.measureOr("--limit", limit, Dimension.CONCENTRATION, 0.019);
        MixedTank after = overflowing ? tank.overflowing(inflow, rate, minutes) : tank.filling(inflow, rate, minutes);
        return new Answer("Mains water into the system, " + (overflowing ? "overflowing" : "filling"))
                .number("flow", inflow.flowLMin(), "L/min")
                .number("mains residual", inflow.residualMgL(), "mg/L")
                .number("time", minutes / 60, "h")
                .number("loss", rate, "1/h")
                .number("volume after", after.volumeL(), "L")
                .number("residual after", 1000 * after.residualMgL(), "ug/L")
                .number("limit", 1000 * watched, "ug/L")
                .number(
                        "mains water that reaches it, no loss, filling",
                        tank.litresUntil(watched, inflow.residualMgL()),
                        "L")
                .source("mass balance of a mixed tank with first-order loss, Chapra 1997, lectures 3 and 4")
                .caution(Cautions.TEST);
    }
}
