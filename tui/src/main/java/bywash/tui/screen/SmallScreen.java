package bywash.tui.screen;

import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import bywash.tui.view.OverviewView;
import java.util.List;

/** Under 80x24: the first thing wrong and the alarms, so that they can still be read and acknowledged. */
final class SmallScreen {
    private SmallScreen() {}

    static void draw(Picture picture, Frame frame, ScreenModel model) {
        OverviewView view = OverviewView.from(frame, 1);
        int width = picture.width();
        int bottom = picture.height() - 1;
        String alarms = view.head().alarms();
        picture.put(
                0,
                0,
                width - alarms.length() - 1,
                view.head().time() + " " + view.head().site(),
                Style.STRONG);
        picture.putBefore(0, width, alarms, Style.of(view.head().alarmTone()));

        List<AlarmLine> list = view.alarms();
        int rows = Math.max(0, bottom - 1);
        int listed = Math.min(list.size(), Math.max(1, rows / 3));
        int row = FirstThing.lines(view.first(), width).draw(picture, 1, 0, Math.max(0, rows - listed));
        int chosen = model.index(frame.snapshot().alarms());
        int from = Math.max(0, Math.min(chosen - listed + 1, list.size() - listed));
        for (int i = from; i < Math.min(list.size(), from + listed) && row < bottom; i++) {
            AlarmsPane.line(picture, row++, 0, width, list.get(i), i == chosen);
        }
        Bars.keys(picture, model);
    }
}
