package bywash.tui.screen;

import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import bywash.tui.view.OverviewView;
import java.util.List;

/** Under 80x24: the first thing wrong and the alarms, so that they can still be read and acknowledged. */
final class SmallScreen {
    private SmallScreen() {}

    static void draw(Picture body, Frame frame, int chosen) {
        OverviewView view = OverviewView.from(frame, 1);
        int width = body.width();
        int rows = body.height();
        List<AlarmLine> list = view.alarms();
        int listed = Math.min(list.size(), Math.max(1, rows / 3));
        int row = FirstThing.lines(view.first(), width).drawFirst(body, 0, Math.max(0, rows - listed), "[Enter: more]");
        int from = Math.max(0, Math.min(chosen - listed + 1, list.size() - listed));
        for (int i = from; i < Math.min(list.size(), from + listed) && row < rows; i++) {
            AlarmsPane.line(body, row++, 0, width, list.get(i), i == chosen);
        }
    }
}
