package bywash.tui.command.calc;

import bywash.rules.water.NitriteGuard;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How much salt keeps nitrite out of the fish. */
@Command(name = "nitrite", description = "Chloride and salt that protect fish from a nitrite.")
final class NitriteCommand extends Calculation {
    @Option(names = "--nitrite", description = "Nitrite as NO2, as in \"2 mg/L\".")
    private @Nullable String nitrite;

    @Option(names = "--as-nitrogen", description = "The nitrite was read as nitrogen (NO2-N).")
    private boolean asNitrogen;

    @Option(names = "--chloride", description = "Chloride in the water, as in \"20 mg/L\"; none without it.")
    private @Nullable String chloride;

    @Option(names = "--volume", description = "Volume of water, as in \"800 L\".")
    private @Nullable String volume;

    @Override
    Answer answer() {
        double typed = Typed.measure("--nitrite", nitrite, Dimension.CONCENTRATION);
        double no2 = asNitrogen ? NitriteGuard.asNo2MgL(typed) : typed;
        double cl = Typed.measureOr("--chloride", chloride, Dimension.CONCENTRATION, 0);
        double litres = Typed.measure("--volume", volume, Dimension.VOLUME);
        return Cautions.salt(new Answer("Chloride against nitrite")
                .number("nitrite as NO2", no2, "mg/L")
                .number("chloride", cl, "mg/L")
                .number("volume", litres, "L")
                .number("chloride needed", NitriteGuard.chlorideNeededMgL(no2), "mg/L")
                .number("pure salt (NaCl) to add", NitriteGuard.saltG(no2, cl, litres), "g")
                .source("SRAC 1997, publication 462: ten parts of chloride to one of nitrite"));
    }
}
