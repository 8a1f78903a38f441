package bywash.tui.command.calc;

import bywash.rules.water.AirPressure;
import bywash.rules.water.OxygenSolubility;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How much oxygen the water can hold, and how far a measured value is from it. */
@Command(name = "oxygen", description = "Oxygen the water can hold; share of it and deficit of a measured value.")
final class OxygenCommand extends Calculation {
    @Option(names = "--temperature", description = "Water temperature, as in \"22 Cel\".")
    private @Nullable String temperature;

    @Option(names = "--salinity", description = "Salinity, as in \"0.5 g/kg\"; fresh water without it.")
    private @Nullable String salinity;

    @Option(names = "--elevation", description = "Elevation, as in \"85 m\"; sea level without it.")
    private @Nullable String elevation;

    @Option(names = "--pressure", description = "Barometer at the site instead of elevation, as in \"1005 hPa\".")
    private @Nullable String pressure;

    @Option(names = "--measured", description = "Measured oxygen, as in \"6.8 mg/L\" or \"82 %%\".")
    private @Nullable String measured;

    @Override
    Answer answer() {
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        double s = Typed.measureOr("--salinity", salinity, Dimension.SALINITY, 0);
        double atm = atm();
        double full = OxygenSolubility.saturationMgL(t, s, atm);
        Answer answer = new Answer("Dissolved oxygen")
                .number("temperature", t, "Cel")
                .number("salinity", s, "g/kg")
                .number("air pressure", atm * 1013.25, "hPa")
                .number("saturation", full, "mg/L");
        if (measured != null) {
            boolean share = measured.trim().endsWith("%");
            double typed = Typed.measure("--measured", measured, share ? Dimension.PERCENT : Dimension.CONCENTRATION);
            double c = share ? OxygenSolubility.concentrationMgL(typed, t, s, atm) : typed;
            answer.number("measured", c, "mg/L")
                    .number("share of saturation", OxygenSolubility.percent(c, t, s, atm), "%")
                    .number("deficit", OxygenSolubility.deficitMgL(c, t, s, atm), "mg/L");
        }
        return answer.source("Benson and Krause 1984, Limnol. Oceanogr. 29:620, in the form of USGS memorandum 2011.03")
                .source("ICAO 1993, standard atmosphere, where pressure comes from elevation");
    }

    private double atm() {
        if (pressure != null && elevation != null) {
            throw new IllegalArgumentException("--pressure and --elevation were both given; give one of them");
        }
        return pressure != null
                ? AirPressure.atmFromHpa(Typed.measure("--pressure", pressure, Dimension.PRESSURE))
                : AirPressure.atmAtElevation(Typed.measureOr("--elevation", elevation, Dimension.LENGTH, 0) / 1000);
    }
}
