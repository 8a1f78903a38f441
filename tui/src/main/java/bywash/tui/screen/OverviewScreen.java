package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.NormalLevels;
import bywash.tui.view.OverviewView;

/** The overview: rows are shared out so that at 80x24 every pane keeps what matters, and more room shows more. */
final class OverviewScreen {
    static final int LEAST_WIDTH = 80;
    static final int LEAST_HEIGHT = 24;
    private static final int HEADINGS = 3;
    private static final int ROOMY_WIDTH = 110;
    private static final int LEAST_LOG = 3;

    private OverviewScreen() {}

    static void draw(Picture picture, Frame frame, NormalLevels normal, int chosen) {
        OverviewView view = OverviewView.from(frame, ReadingsPane.trendColumns(picture.width()), normal);
        Lines first = FirstThing.lines(view, picture.width());
        int strip = Math.min(first.size(), (picture.height() + 2) / 3);
        int[] wanted = {
            view.readings().size(), VesselsPane.wanted(view), LowerPanes.wanted(view, picture.width()),
        };
        int free = picture.height() - HEADINGS - strip;
        if (!view.unprobed().isEmpty() && wanted[0] + wanted[1] + wanted[2] > free) {
            wanted[1]--;
        }
        int[] rows = share(free, wanted);

        int row = first.drawFirst(picture, 0, strip, "[Enter: more]");
        row = ReadingsPane.draw(picture, row, rows[0], view);
        row = VesselsPane.draw(picture, row, rows[1], view);
        int spare = rows[2] - wanted[2];
        if (picture.width() >= ROOMY_WIDTH && spare >= VesselPictures.ROWS) {
            if (VesselPictures.fits(picture.width(), view.vessels())) {
                row = VesselPictures.draw(picture, row, view.vessels());
                spare -= VesselPictures.ROWS;
            }
        }
        boolean log = spare > LEAST_LOG;
        int lower = log ? wanted[2] : picture.height() - row - 1;
        LowerPanes.draw(picture, row, lower, view, chosen);
        if (log) {
            LogPane.draw(
                    picture,
                    row + lower + 1,
                    picture.height() - row - lower - 2,
                    view.log(),
                    "LATEST  alarms and entries, newest first");
        }
    }

    /** One row each in turn until all have what they want or none is left; the last takes what remains. */
    private static int[] share(int free, int[] wanted) {
        int[] rows = {0, 0, 0};
        int left = free;
        boolean given = true;
        while (left > 0 && given) {
            given = false;
            for (int i = wanted.length - 1; i >= 0 && left > 0; i--) {
                if (rows[i] < wanted[i]) {
                    rows[i]++;
                    left--;
                    given = true;
                }
            }
        }
        rows[2] += left;
        return rows;
    }
}
