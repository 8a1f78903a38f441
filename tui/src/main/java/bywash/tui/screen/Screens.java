package bywash.tui.screen;

import bywash.tui.view.Frame;

/** Draws the page the grower is on, at any size. */
public final class Screens {
    private Screens() {}

    /** @param width columns, @param height rows; at least 1 each */
    public static Picture draw(Frame frame, ScreenModel model, boolean unicode, int width, int height) {
        Picture picture = new Picture(Math.max(1, width), Math.max(1, height), unicode);
        switch (model.page()) {
            case OVERVIEW, ACKNOWLEDGE -> overview(picture, frame, model);
            case DETAIL -> DetailScreen.draw(picture, frame, model);
            case TOP_UP -> TopUpScreen.draw(picture, frame, model);
            case END_TOP_UP -> TopUpScreen.drawEnd(picture, frame, model);
            case HELP -> HelpScreen.draw(picture, model);
            case QUIT -> quit(picture, model);
        }
        return picture;
    }

    private static void overview(Picture picture, Frame frame, ScreenModel model) {
        if (picture.width() < OverviewScreen.LEAST_WIDTH || picture.height() < OverviewScreen.LEAST_HEIGHT) {
            SmallScreen.draw(picture, frame, model);
        } else {
            OverviewScreen.draw(picture, frame, model);
        }
    }

    private static void quit(Picture picture, ScreenModel model) {
        picture.heading(0, 0, picture.width(), "LEAVE?");
        Lines lines = new Lines(picture.width());
        lines.add("Without this watch nobody is told of alarms.", Style.PLAIN);
        lines.add("Press y to leave, Esc to stay.", Style.PLAIN);
        lines.draw(picture, 2, 0, Math.max(0, picture.height() - 3), false);
        Bars.keys(picture, model);
    }
}
