package bywash.tui.screen;

import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import bywash.tui.view.NormalLevels;
import bywash.tui.view.OverviewView;
import bywash.tui.view.ReadingLine;
import bywash.tui.view.Tone;
import bywash.tui.view.VesselLine;
import java.util.ArrayList;
import java.util.List;

/** Under 80x24: the first thing wrong, the alarms to acknowledge, then levels and readings as far as there is room. */
final class SmallScreen {
    private SmallScreen() {}

    static void draw(Picture body, Frame frame, NormalLevels normal, int chosen) {
        OverviewView view = OverviewView.from(frame, 1, normal);
        int width = body.width();
        int rows = body.height();
        List<AlarmLine> list = view.alarms();
        int listed = Math.min(list.size(), Math.max(1, rows / 3));
        int row = FirstThing.lines(view, width).drawFirst(body, 0, Math.max(0, rows - listed), "[Enter: more]");
        int from = Math.max(0, Math.min(chosen - listed + 1, list.size() - listed));
        for (int i = from; i < Math.min(list.size(), from + listed) && row < rows; i++) {
            AlarmsPane.line(body, row++, 0, width, list.get(i), i == chosen);
        }
        rest(body, row, view);
    }

    private static void rest(Picture body, int row, OverviewView view) {
        List<Rest> lines = new ArrayList<>();
        for (VesselLine vessel : view.vessels()) {
            String text = vessel.name() + " " + vessel.volume() + ", " + vessel.netFlow() + ", " + vessel.word()
                    + (vessel.left().isEmpty() ? "" : ", " + vessel.left());
            lines.add(new Rest(vessel.tone(), text));
        }
        for (ReadingLine reading : view.readings()) {
            lines.add(new Rest(reading.tone(), reading.name() + " " + reading.value() + ", " + reading.word()));
        }
        lines.sort((a, b) -> b.tone().compareTo(a.tone()));
        int room = body.height() - row;
        int shown = lines.size() <= room ? lines.size() : Math.max(0, room - 1);
        for (int i = 0; i < shown; i++) {
            line(body, row + i, lines.get(i));
        }
        if (shown < lines.size() && room > 0) {
            body.put(row + shown, 0, body.width(), lines.size() - shown + " more at 80x24", Style.PLAIN);
        }
    }

    /** One line of what there is still room for. */
    private record Rest(Tone tone, String text) {}

    private static void line(Picture body, int row, Rest rest) {
        String mark = rest.tone() == Tone.PLAIN ? "  " : rest.tone() == Tone.WARNING ? "! " : "!!";
        body.put(row, 0, body.width(), mark + " " + rest.text(), Style.of(rest.tone()));
    }
}
