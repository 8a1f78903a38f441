package bywash.tui.view;

import bywash.rules.prevention.Suggestion;
import bywash.rules.recovery.DueTest;
import bywash.rules.recovery.RecoveryView;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The way back after an incident, and what the record suggests, in words. */
public final class RecoveryText {
    private RecoveryText() {}

    public static List<Passage> from(Frame frame) {
        List<Passage> out = new ArrayList<>();
        RecoveryView recovery = frame.snapshot().care().recovery();
        if (recovery == null) {
            out.add(Passage.plain("", "No incident with chlorine or another oxidant in the last 30 days."));
        } else {
            recovery(out, recovery, frame);
        }
        out.add(Passage.plain("", ""));
        out.add(Passage.plain("PREVENTION", "what the record suggests"));
        List<Suggestion> suggestions = frame.snapshot().care().suggestions();
        if (suggestions.isEmpty()) {
            out.add(Passage.plain("", "Nothing so far."));
        }
        for (Suggestion s : suggestions) {
            String behind = s.incidents().isEmpty()
                    ? ""
                    : " Incidents: "
                            + s.incidents().stream()
                                    .map(id -> IncidentName.of(id, frame))
                                    .collect(Collectors.joining("; "))
                            + ".";
            out.add(Passage.plain("-", UsWords.water(s.what() + ": " + s.why() + ".", frame) + behind));
        }
        return out;
    }

    private static void recovery(List<Passage> out, RecoveryView recovery, Frame frame) {
        out.add(Passage.plain("Incident", IncidentName.of(recovery.incident(), frame)));
        boolean stands = frame.snapshot().alarms().stream()
                .anyMatch(a -> AlarmLine.active(a) && a.incident().equals(recovery.incident()));
        out.add(
                stands
                        ? new Passage(
                                "State", "! The incident still stands: first its response sheet (r).", Tone.WARNING)
                        : Passage.plain("State", UsWords.water(recovery.words(), frame)));
        out.add(Passage.plain(
                "Feed", UsWords.of(recovery.feedWords(), frame.snapshot().site().units())));
        out.add(Passage.plain("Bacteria", UsWords.water(recovery.bacteria(), frame)));
        boolean first = true;
        for (DueTest test : recovery.tests()) {
            String when = TestSheet.due(test.dueAt(), frame.at());
            String what = TestKind.label(test.quantity()) + " (" + test.why() + ")";
            out.add(new Passage(
                    first ? "Tests" : "",
                    (test.due() ? "! " : "") + when + ": " + what,
                    test.due() ? Tone.WARNING : Tone.PLAIN));
            first = false;
        }
    }
}
