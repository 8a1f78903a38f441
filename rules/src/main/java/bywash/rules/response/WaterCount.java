package bywash.rules.response;

import bywash.rules.chlorine.Litres;
import bywash.rules.chlorine.LitresKnown;
import bywash.rules.detect.FlowFinding;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;

/** Litres that came into and went out of each vessel, added up over the findings of an incident. */
final class WaterCount {
    private final TreeMap<String, List<WaterRun>> runs = new TreeMap<>();
    private final TreeMap<String, LitresKnown> counts = new TreeMap<>();

    /** The latest of one vessel: a run with the same onset is brought up to date, another one is added. */
    void take(FlowFinding finding) {
        Instant since = finding.since();
        boolean moves = switch (finding.verdict()) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT, UNPLANNED_LOSS, PLANNED -> true;
            case LEARNING, QUIET, DRAIN_DOWN -> false;
        };
        if (!moves || since == null || finding.volumeL() == 0) {
            return;
        }
        Litres known =
                counts.computeIfAbsent(finding.vessel(), v -> new LitresKnown()).take(finding);
        boolean declared = finding.verdict() == FlowFinding.Verdict.PLANNED;
        List<WaterRun> of = runs.computeIfAbsent(finding.vessel(), v -> new ArrayList<>());
        WaterRun run = new WaterRun(
                finding.vessel(), since, finding.volumeL() > 0, known, finding.source(), declared);
        if (!of.isEmpty() && of.get(of.size() - 1).since().equals(since)) {
            of.set(of.size() - 1, run);
        } else {
            of.add(run);
        }
    }

    /** Litres that came in unplanned less those that went out. */
    double unplannedL() {
        return runs().stream()
                .filter(r -> !r.declared())
                .mapToDouble(r -> r.in() ? r.litres().likelyL() : -r.litres().likelyL())
                .sum();
    }

    /** By vessel, oldest first. */
    List<WaterRun> runs() {
        return runs.values().stream().flatMap(List::stream).toList();
    }

    /** Goes on from what was counted before. */
    void restore(List<WaterRun> all) {
        all.forEach(
                r -> runs.computeIfAbsent(r.vessel(), v -> new ArrayList<>()).add(r));
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
                    run.declared() ? ", as declared" : "",
                    run.in() && !run.source().isEmpty() ? ", from " + run.source() : ""));
        }
        return words;
    }
}
