package bywash.tui.screen;

import bywash.tui.screen.TopUpForm.Field;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.Frame;
import bywash.tui.view.TopUpCheck;
import bywash.tui.view.TopUpDraft;
import bywash.tui.view.TopUpProgress;

/** Declaring a top-up, and ending it with the question whether the line is shut. */
final class TopUpScreen {
    private static final int LABEL = 12;

    private TopUpScreen() {}

    static void draw(Picture picture, Frame frame, ScreenModel model) {
        TopUpForm form = model.form();
        picture.heading(0, 0, picture.width(), "DECLARE A TOP-UP before water runs");
        if (form != null) {
            TopUpDraft draft = form.draft();
            TopUpCheck check = TopUpCheck.from(frame, draft);
            String unit = new DisplayUnits(frame.snapshot().site().units()).volumeUnit();
            field(picture, 2, "Into", choice(draft.vessel()), form.field() == Field.VESSEL);
            field(picture, 3, "From", choice(draft.source()), form.field() == Field.SOURCE);
            field(picture, 4, "Volume", typed(draft.volume(), unit), form.field() == Field.VOLUME);
            field(picture, 5, "Duration", typed(draft.minutes(), "min"), form.field() == Field.DURATION);
            Lines lines = new Lines(picture.width());
            for (String warning : check.warnings()) {
                lines.add("! ", LABEL, warning, Style.WARNING);
            }
            for (String problem : check.problems()) {
                lines.add("still open", LABEL, problem, Style.PLAIN);
            }
            if (check.ready()) {
                lines.add("ready", LABEL, "Enter declares it; then open the valve.", Style.PLAIN);
            }
            lines.draw(picture, 7, 0, picture.height() - 8, false);
        }
        Bars.keys(picture, model);
    }

    static void drawEnd(Picture picture, Frame frame, ScreenModel model) {
        picture.heading(0, 0, picture.width(), "END THE TOP-UP");
        TopUpProgress progress = TopUpProgress.from(frame);
        Lines lines = new Lines(picture.width());
        for (String line : progress.lines()) {
            lines.add(line, Style.PLAIN);
        }
        if (progress.running()) {
            lines.add(" ", Style.PLAIN);
            lines.add("1.", 3, "Shut the valve. Look at the hose end: it must not drip.", Style.STRONG);
            lines.add("2.", 3, "Then press Enter. From there on any more water counts as not meant.", Style.STRONG);
            lines.add("3.", 3, "The overview then says in words whether the line is shut.", Style.STRONG);
        }
        lines.draw(picture, 2, 0, picture.height() - 3, false);
        Bars.keys(picture, model);
    }

    private static void field(Picture picture, int row, String label, String text, boolean chosen) {
        picture.put(row, 0, chosen ? String.valueOf(picture.glyphs().pointer()) : " ", Style.STRONG);
        picture.put(row, 2, label, Style.STRONG);
        picture.put(row, LABEL, picture.width() - LABEL, text, chosen ? Style.SELECTED : Style.PLAIN);
    }

    private static String choice(String text) {
        return "< " + (text.isEmpty() ? "none" : text) + " >";
    }

    private static String typed(String text, String unit) {
        return "[" + text + " ".repeat(Math.max(0, 7 - text.length())) + "] " + unit;
    }
}
