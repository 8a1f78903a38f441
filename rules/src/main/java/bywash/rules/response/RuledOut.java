package bywash.rules.response;

import bywash.rules.chlorine.BatchView;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.response.Readings.ProbeNow;
import bywash.rules.site.Band;
import bywash.rules.site.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What the readings of a moment rule out, and what they cannot rule out because nobody listens there. */
final class RuledOut {
    private RuledOut() {}

    static List<String> of(Readings now, List<String> reserves) {
        List<String> out = new ArrayList<>();
        for (String reserve : reserves) {
            out.add(reserve(now, reserve));
        }
        ProbeNow oxygen = now.probe(Quantity.DISSOLVED_OXYGEN);
        out.add(
                oxygen == null
                        ? "Lack of oxygen is not ruled out: no oxygen reading."
                        : inBand(oxygen)
                                ? String.format(
                                        Locale.ROOT,
                                        "Lack of oxygen: %.1f mg/L is read in %s.",
                                        oxygen.value(),
                                        oxygen.vessel())
                                : String.format(
                                        Locale.ROOT, "Oxygen is itself out of its band: %.1f mg/L.", oxygen.value()));
        ProbeNow ph = now.probe(Quantity.PH);
        if (ph != null && inBand(ph)) {
            out.add(String.format(Locale.ROOT, "A pH shock: %.2f is inside its band.", ph.value()));
        }
        now.residual().evidence().stream()
                .filter(line -> line.contains("strong against") || line.contains("tells against"))
                .forEach(line -> out.add("Speaks against chlorine: " + line + "."));
        if (now.residual().evidence().stream().anyMatch(line -> line.startsWith("ORP: no"))) {
            out.add("Chlorine is not ruled out by any probe: no oxidation potential is read.");
        }
        return out;
    }

    private static boolean inBand(ProbeNow probe) {
        Band band = probe.band();
        return band == null || band.contains(probe.value());
    }

    private static String reserve(Readings now, String reserve) {
        FlowFinding finding = finding(now, reserve);
        if (finding == null || finding.verdict() == Verdict.LEARNING) {
            return "Water from " + reserve + " is not ruled out: its level is not known.";
        }
        BatchView batch = now.batches().stream()
                .filter(b -> b.vessel().equals(reserve))
                .findFirst()
                .orElse(null);
        String from = now.findings().stream()
                .filter(f ->
                        f.verdict() == Verdict.UNPLANNED_INFLOW && f.source().equals(reserve))
                .map(f -> "Water from " + reserve + " is what enters " + f.vessel() + ": " + f.why())
                .findFirst()
                .orElse("");
        if (!from.isEmpty()) {
            return from;
        }
        String what = batch == null ? "" : " (" + batch.words() + ")";
        return switch (finding.verdict()) {
            case QUIET, LEARNING, DRAIN_DOWN -> "Water from " + reserve + ": its level does not fall.";
            case UNPLANNED_LOSS -> reserve + " falls: water leaves it" + what + ".";
            case PLANNED, UNPLANNED_INFLOW, LINE_NOT_SHUT -> reserve + " moves as declared" + what + ".";
        };
    }

    private static @Nullable FlowFinding finding(Readings now, String vessel) {
        return now.findings().stream()
                .filter(f -> f.vessel().equals(vessel))
                .findFirst()
                .orElse(null);
    }
}
