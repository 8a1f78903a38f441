package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.tui.view.AlarmDetail;
import bywash.tui.view.Frame;
import java.util.List;

/** One alarm in full: cause, consequence, time left, action, evidence, cautions. */
final class DetailScreen {
    private static final int INDENT = 10;

    private DetailScreen() {}

    static void draw(Picture picture, Frame frame, ScreenModel model) {
        List<AlarmView> alarms = frame.snapshot().alarms();
        AlarmView alarm = model.opened(frame);
        int rows = picture.height() - 2;
        if (alarm == null) {
            picture.heading(0, 0, picture.width(), "ALARM");
            picture.put(2, 0, picture.width(), "This alarm has returned to normal.", Style.PLAIN);
        } else {
            AlarmDetail detail = AlarmDetail.from(alarm, frame);
            String place = " (" + (model.index(alarms) + 1) + " of " + alarms.size() + ")";
            picture.heading(0, 0, picture.width(), "ALARM " + detail.line().name() + place);
            lines(detail, picture.width()).draw(picture, 1, 0, rows, false);
        }
        Bars.keys(picture, model);
    }

    private static Lines lines(AlarmDetail detail, int width) {
        Style style = Style.of(detail.line().tone());
        Lines lines = new Lines(width);
        lines.add("State", INDENT, (detail.line().mark() + " " + detail.title()).strip(), style);
        lines.add("What", INDENT, detail.what(), style);
        lines.add("Since", INDENT, detail.since(), Style.PLAIN);
        lines.add("Left", INDENT, detail.left(), Style.PLAIN);
        lines.add("Why", INDENT, detail.why(), Style.PLAIN);
        lines.add("If not", INDENT, detail.consequence(), Style.PLAIN);
        int step = 1;
        for (String action : detail.action()) {
            lines.add(step == 1 ? "DO NOW" : "", INDENT, step + ". " + action, Style.PLAIN);
            step++;
        }
        boolean start = true;
        for (String evidence : detail.evidence()) {
            lines.add(start ? "Evidence" : "", INDENT, evidence, Style.PLAIN);
            start = false;
        }
        lines.add("Cautions", INDENT, String.join(" ", detail.cautions()), Style.PLAIN);
        return lines;
    }
}
