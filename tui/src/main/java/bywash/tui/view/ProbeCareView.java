package bywash.tui.view;

import bywash.rules.husbandry.probes.ProbeCareStatus;
import bywash.rules.husbandry.probes.TestDifference;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.text.Sentence;
import java.util.ArrayList;
import java.util.List;

/** The care of every probe in words: calibrations, drift, tests against it, and what is due. */
public final class ProbeCareView {
    private ProbeCareView() {}

    public static List<Passage> from(Frame frame) {
        return UsWords.of(passages(frame), frame.snapshot().site().units());
    }

    private static List<Passage> passages(Frame frame) {
        List<Passage> out = new ArrayList<>();
        SeasonStatus season = frame.snapshot().season();
        if (season == null || season.probes().isEmpty()) {
            out.add(Passage.plain("", "No probe on record that is calibrated."));
            return out;
        }
        for (ProbeCareStatus care : season.probes()) {
            boolean bad = switch (care.state()) {
                case GOOD, NOT_ON_RECORD -> false;
                case DUE_SOON, OVERDUE, DISAGREES, FAULTY -> true;
            };
            Tone tone = bad ? Tone.WARNING : Tone.PLAIN;
            out.add(new Passage(care.probe(), (bad ? "! " : "") + care.words(), tone));
            if (!care.differences().isEmpty()) {
                out.add(Passage.plain("tests", differences(care)));
            }
            if (care.careAt() != null) {
                out.add(Passage.plain("care", care.care() + " on " + StockView.day(care.careAt(), frame)));
            }
        }
        out.add(Passage.plain("", ""));
        out.add(Passage.plain(
                "", "A suspect reading still raises its alarms; check it by hand before you act on it alone."));
        return out;
    }

    private static String differences(ProbeCareStatus care) {
        List<TestDifference> all = care.differences();
        TestDifference last = all.get(all.size() - 1);
        return Sentence.of(
                "%d since the calibration; the last: probe %.2f, test %.2f, %+.2f",
                all.size(), last.probeValue(), last.testValue(), last.difference());
    }
}
