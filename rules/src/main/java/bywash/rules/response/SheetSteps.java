package bywash.rules.response;

import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.response.Readings.ProbeNow;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What to do in an incident, in order. Common practice; where it can hurt it defers to labels and licensed advice. */
final class SheetSteps {
    /** Shown with every sheet. */
    static final List<String> CAUTIONS = List.of(
            "Estimates are no test: confirm chlorine with a DPD kit before acting where time allows.",
            "Doses are arithmetic on the label strength: follow the label, wear gloves and eye protection, never mix"
                    + " chemicals.",
            "Fish welfare, slaughter, food safety and discharge follow local rules and licensed practice.");

    private SheetSteps() {}

    /**
     * @param entering whether water came in, else it was lost
     * @param mains what the supply carries
     */
    static List<SheetStep> of(Readings now, boolean entering, Mains mains) {
        List<SheetStep> steps = new ArrayList<>();
        steps.add(
                entering
                        ? SheetStep.open(
                                "stop-water",
                                "Stop the water: shut the valve and the second valve, look for a hose, wait until the"
                                        + " balance says the inflow has ended.",
                                "")
                        : SheetStep.open(
                                "stop-loss",
                                "Find where the water goes: hoses, bed drains, joints, overflow; stop the pump if the"
                                        + " sump runs low.",
                                "Keep the fish tank aerated while the pump stands."));
        steps.add(SheetStep.open("air", "Air on full; stop feeding.", ""));
        if (mains.disinfectant() != Disinfectant.NONE && chlorine(now, entering)) {
            chlorine(steps, now, mains);
        }
        steps.add(SheetStep.open(
                "advice",
                "Fish that gasp, roll or bleed at the gills: call a vet or fish-health adviser. Do not discharge or sell"
                        + " before you know the rules that apply.",
                "Decide otherwise than this sheet where licensed advice says so."));
        return steps;
    }

    private static boolean chlorine(Readings now, boolean entering) {
        return entering || now.residual().highUgL() > ResidualEstimate.CHRONIC_UG_L;
    }

    private static void chlorine(List<SheetStep> steps, Readings now, Mains mains) {
        boolean chloramine = mains.disinfectant() == Disinfectant.CHLORAMINE;
        steps.add(
                SheetStep.open(
                        "test-chlorine",
                        "Test total chlorine with a DPD kit: fish tank first, then the source. Enter the results.",
                        "A kit reads to about 0.02 mg/L, which is the acute criterion (0.019 mg/L): a zero is no proof alone."));
        List<String> doses = new ArrayList<>();
        doses.add(DoseWords.system(now.residual(), now.volume(), chloramine));
        now.batches().stream()
                .filter(b ->
                        b.safety() != BatchView.Safety.CONFIRMED && b.residual().highMgL() > 0.02)
                .forEach(b -> doses.add(DoseWords.reserve(b, chloramine)));
        steps.add(SheetStep.open(
                "dose",
                "Dose a dechlorinator where the test shows chlorine. " + String.join(" ", doses),
                DoseWords.CAUTION));
        steps.add(SheetStep.open("retest", "Test again 15 min after the dose, and until two tests show none.", ""));
        steps.add(SheetStep.open("move-fish", move(now), "Catching stresses fish: only where staying is worse."));
    }

    private static String move(Readings now) {
        String ready = now.batches().stream()
                .filter(b -> b.safety() == BatchView.Safety.CONFIRMED || b.safety() == BatchView.Safety.NO_DISINFECTANT)
                .map(b -> String.format(
                        Locale.ROOT, "%s (%.0f L)", b.vessel(), b.volume().likelyL()))
                .collect(Collectors.joining(", "));
        if (ready.isEmpty()) {
            return "Move fish only into clean water of the right temperature and pH: no reserve is tested free of"
                    + " chlorine now.";
        }
        ProbeNow t = now.probe(Quantity.TEMPERATURE);
        ProbeNow ph = now.probe(Quantity.PH);
        String near = t == null || ph == null
                ? "check its temperature and pH against the tank"
                : String.format(
                        Locale.ROOT, "only if it is within 2 C of %.1f C and 0.5 of pH %.1f", t.value(), ph.value());
        return "If fish suffer, move them: " + ready + " is free of chlorine; " + near + ".";
    }
}
