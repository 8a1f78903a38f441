package bywash.tui.command.calc;

import bywash.rules.water.CarbonateWater;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Any two of pH, alkalinity and carbon dioxide give the third. */
@Command(
        name = "carbonate",
        description = "Carbon dioxide from pH and alkalinity, or pH from alkalinity and carbon dioxide or air.")
final class CarbonateCommand extends Calculation {
    @Option(names = "--temperature", description = "Water temperature, as in \"22 Cel\".")
    private @Nullable String temperature;

    @Option(names = "--alkalinity", description = "Alkalinity as CaCO3, as in \"120 mg/L\".")
    private @Nullable String alkalinity;

    @Option(names = "--ph", description = "pH, as in 7.2.")
    private @Nullable String ph;

    @Option(names = "--co2", description = "Dissolved carbon dioxide instead of pH, as in \"8 mg/L\".")
    private @Nullable String co2;

    @Option(
            names = "--air",
            description = "Carbon dioxide of the air the water is at rest with, instead of pH, as in \"420 ppm\".")
    private @Nullable String air;

    @Override
    Answer answer() {
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        double alk = Typed.measure("--alkalinity", alkalinity, Dimension.CONCENTRATION);
        int given = (ph == null ? 0 : 1) + (co2 == null ? 0 : 1) + (air == null ? 0 : 1);
        if (given != 1) {
            throw new IllegalArgumentException("give exactly one of --ph, --co2 and --air");
        }
        CarbonateWater water;
        if (ph != null) {
            water = CarbonateWater.ofAlkalinity(t, Typed.measure("--ph", ph, Dimension.PH), alk);
        } else if (co2 != null) {
            water = CarbonateWater.ofCo2(t, alk, Typed.measure("--co2", co2, Dimension.CONCENTRATION));
        } else {
            water = CarbonateWater.openToAir(t, alk, Typed.measure("--air", air, Dimension.AIR));
        }
        return new Answer("Carbonate system")
                .number("temperature", t, "Cel")
                .number("alkalinity", water.alkalinityMgL(), "mg/L as CaCO3")
                .number("pH", water.ph(), "")
                .number("carbon dioxide", water.co2MgL(), "mg/L")
                .number("total inorganic carbon", water.totalCarbonMmolL(), "mmol/L")
                .remark("Activity coefficients are taken as 1: up to 8 % out in carbon dioxide.")
                .source("Plummer and Busenberg 1982, Geochim. Cosmochim. Acta 46:1011; Millero 1995, 59:661 for water");
    }
}
