package bywash.tui.command.calc;

import bywash.rules.water.PhCalibration;
import bywash.rules.water.PhElectrode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The state of a pH electrode from two or three buffers. */
@Command(name = "ph-probe", description = "Slope, offset and verdict of a pH electrode from two or three buffers.")
final class PhProbeCommand extends Calculation {
    @Option(names = "--temperature", description = "Temperature of the buffers, as in \"25 Cel\".")
    private @Nullable String temperature;

    @Option(
            names = "--point",
            arity = "1",
            description = "pH of a buffer and the reading, as in \"7.00=-3 mV\"; two or three times.")
    private List<String> points = new ArrayList<>();

    @Option(names = "--reading", description = "A reading to turn into pH, as in \"18 mV\".")
    private @Nullable String reading;

    @Override
    Answer answer() {
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        PhCalibration found =
                PhCalibration.of(points.stream().map(PhProbeCommand::point).toList(), t);
        Answer answer = new Answer("pH electrode: " + found.verdict().words())
                .number("temperature", t, "Cel")
                .number("slope", found.slopeMv(), "mV per pH")
                .number("ideal slope", PhElectrode.idealSlopeMv(t), "mV per pH")
                .number("slope against ideal", found.slopePercent(), "%")
                .number("offset at pH 7", found.offsetMv(), "mV")
                .number("largest miss from the line", found.largestMissMv(), "mV");
        if (reading != null) {
            double mv = Typed.measure("--reading", reading, Dimension.POTENTIAL);
            answer.number("reading", mv, "mV").number("pH", found.ph(mv), "");
        }
        return answer.source("Nernst equation, CODATA 2018; IUPAC 2002, Pure Appl. Chem. 74:2169")
                .source("bounds of the verdict: bench practice, from memory: to be confirmed against the source");
    }

    private static PhCalibration.Point point(String text) {
        String[] sides = text.split("=", -1);
        if (sides.length != 2) {
            throw new IllegalArgumentException(
                    "--point is \"" + text + "\"; it must be a pH and a reading, such as \"7.00=-3 mV\"");
        }
        return new PhCalibration.Point(
                Typed.measure("--point", sides[0], Dimension.PH),
                Typed.measure("--point", sides[1], Dimension.POTENTIAL));
    }
}
