package bywash.rules.response;

import bywash.rules.chlorine.Litres;
import bywash.rules.detect.FlowFinding;
import bywash.rules.text.Sentence;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;

/** Litres that came into and went out of each vessel, added up over the findings of an incident. */
final class WaterCount {
    private final TreeMap<String, List<WaterRun>> runs = new TreeMap<>();
    /** Flows that began before a restart and were found again, by vessel. */
    private final TreeMap<String, Again> foundAgain = new TreeMap<>();

    private Instant restoredAt = Instant.MIN;

    /**
     * A flow found again with another onset.
     *
     * @param since by which it is known since
     * @param leastL what was known of it before, which did not go out again
     */
    private record Again(Instant since, double leastL) {}

    /** The latest of one vessel: a run with the same onset is brought up to date, another one is added. */
    void take(FlowFinding finding) {
        boolean moves = switch (finding.verdict()) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT, UNPLANNED_LOSS, PLANNED -> true;
            case LEARNING, QUIET, DRAIN_DOWN -> false;
        };
        Instant since = finding.since();
        if (!moves || since == null || finding.volumeL() == 0) {
            return;
        }
        String vessel = finding.vessel();
        boolean in = finding.volumeL() > 0;
        boolean declared = finding.verdict() == FlowFinding.Verdict.PLANNED;
        List<WaterRun> of = runs.computeIfAbsent(vessel, v -> new ArrayList<>());
        WaterRun last = of.isEmpty() ? null : of.get(of.size() - 1);
        boolean again = last != null && again(last, since, in, declared);
        Litres moved = Litres.of(finding.moved());
        Again before = again ? foundAgain.get(vessel) : null;
        Litres known = before == null ? moved : moved.atLeast(before.leastL());
        Instant onset = again && last != null ? last.since() : since;
        WaterRun run =
                new WaterRun(vessel, onset, in, known, finding.source(), declared, StrictMath.abs(finding.declaredL()));
        if (last != null && last.since().equals(onset)) {
            of.set(of.size() - 1, run);
        } else {
            of.add(run);
        }
    }

    /** Whether a flow is the last run, which a restart in its midst has given another onset. */
    private boolean again(WaterRun last, Instant since, boolean in, boolean declared) {
        Again known = foundAgain.get(last.vessel());
        if (known != null && since.equals(known.since())) {
            return true;
        }
        boolean other = last.since().equals(since) || last.in() != in || last.declared() != declared;
        if (other || !last.since().isBefore(restoredAt) || !since.isBefore(restoredAt)) {
            return false;
        }
        foundAgain.put(last.vessel(), new Again(since, last.litres().lowL()));
        return true;
    }

    /** Litres that came in unplanned less those that went out. */
    double unplannedL() {
        return runs().stream()
                .filter(r -> !r.declared())
                .mapToDouble(r -> r.litres().beyond(r.declaredL()).likelyL() * (r.in() ? 1 : -1))
                .sum();
    }

    /** By vessel, oldest first. */
    List<WaterRun> runs() {
        return runs.values().stream().flatMap(List::stream).toList();
    }

    /** Goes on from what was counted before a restart. */
    void restore(List<WaterRun> all, Instant at) {
        restoredAt = at;
        for (WaterRun run : all) {
            runs.computeIfAbsent(run.vessel(), v -> new ArrayList<>()).add(run);
        }
    }

    private static String declared(WaterRun run) {
        if (run.declaredL() > 0) {
            return Sentence.of(", %.0f L of them declared", run.declaredL());
        }
        return run.declared() ? ", as declared" : "";
    }

    List<String> words(ZoneId zone) {
        List<String> words = new ArrayList<>();
        for (WaterRun run : runs()) {
            words.add(String.format(
                    Locale.ROOT,
                    "%s: %.0f L (%.0f to %.0f L) %s since %s%s%s",
                    run.vessel(),
                    run.litres().likelyL(),
                    run.litres().lowL(),
                    run.litres().highL(),
                    run.in() ? "in" : "out",
                    SiteTime.words(run.since(), zone),
                    declared(run),
                    run.in() && !run.source().isEmpty() ? ", from " + run.source() : ""));
        }
        return words;
    }
}
