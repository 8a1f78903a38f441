package bywash.tui.screen;

import bywash.tui.view.HeadView;

/** The top and the bottom line, the same on every page. */
final class Bars {
    private Bars() {}

    static void head(Picture picture, HeadView head) {
        int width = picture.width();
        int room = width - head.alarms().length() - 1;
        picture.put(0, 0, room, head.site(), Style.STRONG);
        int column = Math.min(room, head.site().length()) + 2;
        column = piece(picture, column, room, head.time(), Style.PLAIN);
        column = piece(picture, column, room, head.feed(), Style.of(head.feedTone()));
        piece(picture, column, room, head.counts(), Style.PLAIN);
        picture.putBefore(0, width, head.alarms(), Style.of(head.alarmTone()));
    }

    private static int piece(Picture picture, int column, int room, String text, Style style) {
        picture.put(0, column, Math.max(0, room - column), text, style);
        return column + text.length() + 2;
    }

    static void keys(Picture picture, ScreenModel model) {
        int row = picture.height() - 1;
        Page page = model.keyPage();
        String prompt = page == Page.ACKNOWLEDGE ? "Ack:  " : "";
        String line = prompt + KeyMap.line(page, picture.width() - prompt.length());
        if (page == Page.ACKNOWLEDGE) {
            picture.put(row, 0, picture.width(), line, Style.SELECTED);
        } else if (!model.notice().isEmpty()) {
            picture.put(row, 0, picture.width(), model.notice(), Style.SELECTED);
        } else {
            picture.put(row, 0, picture.width(), line, Style.STRONG);
        }
    }
}
