package bywash.tui.screen;

import bywash.tui.view.Frame;

/** Draws the page the grower is on, between the top and the bottom line, at any size. */
public final class Screens {
    private Screens() {}

    /** @param width columns, @param height rows; at least 1 each */
    public static Picture draw(Frame frame, ScreenModel model, boolean unicode, int width, int height) {
        Picture picture = new Picture(Math.max(1, width), Math.max(1, height), unicode);
        if (picture.height() > 2) {
            Picture body = new Picture(picture.width(), picture.height() - 2, unicode);
            model.page().draw(body, frame);
            picture.lay(1, 0, body);
        }
        Bars.head(picture, frame, model.bell().silent());
        if (picture.height() > 1) {
            Bars.keys(picture, model);
        }
        return picture;
    }
}
