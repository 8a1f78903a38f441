package bywash.tui.view;

import bywash.rules.response.ResponseSheet;
import bywash.rules.response.SheetEvent;
import bywash.rules.response.SheetStep;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** A response sheet as passages; the steps come first, because they are what is done with it. */
public final class SheetView {
    private SheetView() {}

    /** @param chosen number of the step that Enter ticks, from 1; 0 for none */
    public static List<Passage> from(ResponseSheet sheet, int chosen, Frame frame) {
        List<Passage> out = new ArrayList<>();
        String ended = sheet.ended() == null ? "still stands" : "ended " + clock(sheet.ended(), frame);
        out.add(Passage.plain("Since", clock(sheet.began(), frame) + ", " + ended));
        int number = 1;
        for (SheetStep step : sheet.steps()) {
            step(out, step, number, number == chosen, frame);
            number++;
        }
        section(out, "Water", sheet.water(), frame);
        section(out, "Chlorine", sheet.residual(), frame);
        section(out, "Readings", sheet.rulesOut(), frame);
        String label = "Record";
        for (SheetEvent event : sheet.events()) {
            out.add(Passage.plain(label, clock(event.at(), frame) + " " + UsWords.water(event.words(), frame)));
            label = "";
        }
        section(out, "Cautions", sheet.cautions(), frame);
        return out;
    }

    private static void step(List<Passage> out, SheetStep step, int number, boolean chosen, Frame frame) {
        Instant done = step.doneAt();
        String mark = (chosen ? ">" : " ") + number + (done == null ? " [ ]" : " [x]");
        String when = done == null ? "" : "done " + clock(done, frame) + ": ";
        Tone tone = chosen && done == null ? Tone.WARNING : Tone.PLAIN;
        out.add(new Passage(mark, when + UsWords.water(step.words(), frame), tone));
        if (!step.caution().isEmpty() && done == null) {
            out.add(Passage.plain("", "Mind: " + step.caution()));
        }
    }

    private static void section(List<Passage> out, String label, List<String> lines, Frame frame) {
        String first = label;
        for (String line : lines) {
            out.add(Passage.plain(first, UsWords.water(line, frame)));
            first = "";
        }
    }

    private static String clock(Instant at, Frame frame) {
        return Words.clock(at, frame.at(), frame.snapshot().site().timeZone());
    }
}
