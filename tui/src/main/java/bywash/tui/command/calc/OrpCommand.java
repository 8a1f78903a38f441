package bywash.tui.command.calc;

import bywash.rules.water.OrpCheck;
import bywash.rules.water.ReferenceElectrode;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** ORP on the hydrogen scale, and what check solutions should read. */
@Command(
        name = "orp",
        description = "ORP against silver chloride to the hydrogen scale, and what check solutions should read.")
final class OrpCommand extends Calculation {
    @Option(names = "--reading", description = "Reading of the probe, as in \"310 mV\".")
    private @Nullable String reading;

    @Option(names = "--temperature", description = "Water temperature, as in \"22 Cel\".")
    private @Nullable String temperature;

    @Option(
            names = "--reference",
            description = "Filling of the reference: saturated, 4M, 3.5M or 3M; saturated without it.")
    private @Nullable String reference;

    @Override
    Answer answer() {
        ReferenceElectrode electrode = reference == null
                ? ReferenceElectrode.SATURATED
                : Typed.word("--reference", reference, ReferenceElectrode.values(), ReferenceElectrode::word);
        double mv = Typed.measure("--reading", reading, Dimension.POTENTIAL);
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        Answer answer = new Answer("Oxidation-reduction potential, reference " + electrode.word())
                .number("reading", mv, "mV")
                .number("temperature", t, "Cel")
                .number("reference against hydrogen", electrode.potentialMv(t), "mV")
                .number("on the hydrogen scale", electrode.toHydrogenMv(mv, t), "mV");
        if (t <= 30) {
            answer.number("ZoBell's solution should read", electrode.fromHydrogenMv(OrpCheck.zobellMv(t), t), "mV");
        }
        return answer.number(
                        "Light's solution should read at 25 Cel",
                        electrode.fromHydrogenMv(OrpCheck.LIGHT_25_MV, 25),
                        "mV")
                .remark("A probe within " + Figures.plain(OrpCheck.PASS_MV) + " mV of the check solution passes.")
                .source("APHA Standard Methods 2580; USGS field manual A6.5 for saturated and 3.5M (from memory: to be"
                        + " confirmed against the source), computed for 3M and 4M")
                .caution("ORP is a mixed potential and no measure of chlorine: confirm chlorine with a DPD kit");
    }
}
