package bywash.tui.command.calc;

import bywash.rules.text.Names;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.PhDose;
import bywash.rules.water.PhDosePlan;
import bywash.rules.water.PhReagent;
import java.time.Duration;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** An acid or base in small steps, each with a wait and a re-test. */
@Command(
        name = "ph-dose",
        description = "Acid or base to move the pH, in small steps with a wait and a re-test after each.")
final class PhDoseCommand extends Calculation {
    @Option(
            names = "--reagent",
            description = "phosphoric-acid, potassium-hydroxide and others; a wrong one lists them.")
    private @Nullable String reagent;

    @Option(names = "--from", description = "pH now, as in 7.8.")
    private @Nullable String from;

    @Option(names = "--to", description = "pH wanted, as in 7.0.")
    private @Nullable String to;

    @Option(names = "--volume", description = "Volume of water, as in \"800 L\".")
    private @Nullable String volume;

    @Option(names = "--alkalinity", description = "Alkalinity as CaCO3, as in \"120 mg/L\".")
    private @Nullable String alkalinity;

    @Option(names = "--temperature", description = "Water temperature, as in \"22 Cel\".")
    private @Nullable String temperature;

    @Option(
            names = "--strength",
            description =
                    "Pure chemical in the product by weight, from the label, as in \"38 %%\"; as usually sold without it.")
    private @Nullable String strength;

    @Option(names = "--step", description = "Largest change of pH in one step, 0.05 to 0.5; 0.2 without it.")
    private @Nullable String step;

    @Option(names = "--wait", description = "Wait before each re-test, as in \"4 h\", also taken without it.")
    private @Nullable String wait;

    @Option(names = "--air", description = "Carbon dioxide of the air, as in \"420 ppm\", also taken without it.")
    private @Nullable String air;

    @Override
    Answer answer() {
        PhReagent chosen = Typed.word("--reagent", reagent, PhReagent.values(), PhReagent::word);
        double t = Typed.measure("--temperature", temperature, Dimension.TEMPERATURE);
        double alk = Typed.measure("--alkalinity", alkalinity, Dimension.CONCENTRATION);
        double start = Typed.measure("--from", from, Dimension.PH);
        double goal = Typed.measure("--to", to, Dimension.PH);
        double label = Typed.strength(strength, chosen.word());
        double hours = Typed.measureOr("--wait", wait, Dimension.TIME, 4);
        PhDosePlan.Method method = new PhDosePlan.Method(
                chosen,
                Typed.measure("--volume", volume, Dimension.VOLUME),
                label,
                Typed.measureOr("--step", step, Dimension.PH, 0.2),
                Duration.ofMinutes(Math.round(hours * 60)));
        CarbonateWater before = CarbonateWater.ofAlkalinity(t, start, alk);
        PhDosePlan plan = PhDosePlan.of(before, goal, method);
        Answer answer = new Answer("pH from " + Figures.plain(start) + " to " + Figures.plain(goal) + " with "
                        + Names.words(chosen.word()))
                .number("volume", method.volumeL(), "L")
                .number("alkalinity now", alk, "mg/L as CaCO3")
                .number("strength", label, "%")
                .number("product in all steps, closed to air", plan.totalG(), "g");
        if (!plan.steps().isEmpty()) {
            double left = plan.steps().get(plan.steps().size() - 1).alkalinityLeftMgL();
            answer.number("alkalinity left", left, "mg/L as CaCO3");
        }
        Cautions.strength(answer, strength, chosen.word());
        steps(answer, plan);
        open(answer, before, goal, method);
        answer.source("charge balance with Plummer and Busenberg 1982; acid constants from the CRC Handbook"
                + " (from memory: to be confirmed against the source)");
        return Cautions.ph(answer, chosen.isAcid());
    }

    private static void steps(Answer answer, PhDosePlan plan) {
        String pause = Figures.plain(plan.retestAfter().toMinutes() / 60.0) + " h";
        int number = 0;
        for (PhDosePlan.Step step : plan.steps()) {
            number++;
            answer.remark(String.format(
                    Locale.ROOT,
                    "Step %d: add %s, expect pH %s and alkalinity %s as CaCO3; wait %s, test pH, go on only if it agrees.",
                    number,
                    Figures.withUnit(step.productG(), "g"),
                    Figures.plain(step.toPh()),
                    Figures.withUnit(step.alkalinityLeftMgL(), "mg/L"),
                    pause));
        }
    }

    private void open(Answer answer, CarbonateWater before, double goal, PhDosePlan.Method method) {
        double ppm = Typed.measureOr("--air", air, Dimension.AIR, 420);
        double rest = CarbonateWater.openToAir(before.temperatureC(), before.alkalinityMgL(), ppm)
                .ph();
        answer.remark("Left open to air of " + Figures.plain(ppm) + " ppm without a dose, it comes to rest at pH "
                + Figures.plain(rest) + ".");
        if (goal < rest == method.reagent().isAcid()) {
            PhDose dose = PhDose.open(before, method.reagent(), goal, ppm);
            double grams = dose.grams(method.reagent(), method.volumeL()) / (method.strengthPercent() / 100);
            answer.remark("To stay at pH " + Figures.plain(goal) + " open to that air takes "
                    + Figures.withUnit(grams, "g") + " in all and leaves alkalinity of "
                    + Figures.withUnit(dose.after().alkalinityMgL(), "mg/L") + " as CaCO3.");
        } else {
            answer.remark(
                    "Aeration alone takes it past pH " + Figures.plain(goal) + ": aerate and test before dosing.");
        }
    }
}
