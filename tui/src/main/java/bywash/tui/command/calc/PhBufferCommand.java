package bywash.tui.command.calc;

import bywash.rules.water.PhBuffer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** pH of the standard buffers at a temperature. */
@Command(name = "ph-buffer", description = "pH of the standard buffers at a temperature.")
final class PhBufferCommand extends Calculation {
    @Option(names = "--temperature", description = "Temperature of the buffer, as in \"25 Cel\".")
    private @Nullable String temperature;

    @Override
    Answer answer() {
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        Answer answer = new Answer("Standard buffers").number("temperature", t, "Cel");
        for (PhBuffer buffer : PhBuffer.values()) {
            answer.number(buffer.word(), buffer.ph(t), "pH");
        }
        return answer.remark(
                        "Bought buffers of pH 4.00, 7.00 and 10.01 are other mixtures: use the table on their label.")
                .source("NIST reference buffers as in DIN 19266 (from memory: to be confirmed against the source)");
    }
}
