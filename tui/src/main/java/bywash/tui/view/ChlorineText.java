package bywash.tui.view;

import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.site.Site;
import bywash.rules.site.SystemVolume;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The chlorine estimate in full: range, criteria, what lies ahead, and every piece of evidence for and against. */
public final class ChlorineText {
    private ChlorineText() {}

    public static List<Passage> from(Frame frame) {
        ResidualEstimate e = frame.snapshot().residual();
        ChlorineView view = ChlorineView.from(frame);
        String mark = view.tone() == Tone.CRITICAL ? "!! " : view.tone() == Tone.WARNING ? "! " : "";
        List<Passage> out = new ArrayList<>();
        out.add(new Passage("Estimate", mark + view.verdict(), view.tone()));
        out.add(Passage.plain("Range", view.range()));
        out.add(Passage.plain("Criteria", view.criteria()));
        out.add(Passage.plain("Chance", view.chance().replaceFirst("^chance ", "")));
        out.add(Passage.plain("Water", water(frame)));
        out.add(Passage.plain("Last test", lastTest(frame)));
        String label = "Evidence";
        for (String line : view.evidence()) {
            boolean ahead = line.startsWith("Ahead: ");
            out.add(Passage.plain(ahead ? "Ahead" : label, ahead ? line.substring("Ahead: ".length()) : line));
            label = ahead ? label : "";
        }
        if (e.evidence().isEmpty()) {
            out.add(Passage.plain(label, "none yet"));
        }
        out.add(Passage.plain("", ""));
        out.add(Passage.plain(
                "",
                "Total residual chlorine, free and combined, of the water in the loop. An estimate is no test: confirm it"
                        + " with a DPD kit before acting where time allows, and enter the result (m)."));
        return out;
    }

    /** The latest total-chlorine test of the loop, which the estimate goes on from. */
    private static String lastTest(Frame frame) {
        Site site = frame.snapshot().site();
        return frame.snapshot().tests().stream()
                .filter(t -> t.quantity().equals("total-chlorine") && !site.isReserve(t.vessel()))
                .max(Comparator.comparing(WaterTest::at))
                .map(t -> Words.number(t.value(), 2) + " mg/L in " + t.vessel() + ", "
                        + Words.clock(t.at(), frame.at(), site.timeZone()) + " ("
                        + Words.span(t.at(), frame.at()) + " ago)")
                .orElse("none of the loop on record");
    }

    private static String water(Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        SystemVolume volume = frame.snapshot().systemVolume();
        return units.volume(volume.likelyL()) + " in the loop (" + units.range(volume.lowL(), volume.highL()) + ")";
    }
}
