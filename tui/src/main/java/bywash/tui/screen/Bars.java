package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.HeadView;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;

/** The top and the bottom line, the same on every page. */
final class Bars {
    private static final int NARROW = 60;
    /** The site's name gives way first, down to this. */
    private static final int LEAST_SITE = 6;
    /** Whether the feed is lost is always said. */
    private static final int LEAST_FEED = 9;

    private static final List<String> STAY = List.of("ack", "pages", "help");

    /** Between keys; nearer where they would not all fit. */
    private static final String FAR = "   ";

    private static final String NEAR = "  ";

    private Bars() {}

    static void head(Picture picture, Frame frame, boolean silent) {
        HeadView head = HeadView.from(frame);
        int width = picture.width();
        int room = width - head.alarms().length() - 1;
        picture.putBefore(0, width, head.alarms(), Style.of(head.alarmTone()));
        int column = 0;
        if (width < NARROW) {
            column = piece(picture, column, room, head.time(), Style.PLAIN);
            String most = !head.feedUp() ? head.feed() : head.lost() ? head.counts() : head.site();
            piece(picture, column, room, most, Style.of(head.feedTone()));
            return;
        }
        String counts = (silent ? "bell off  " : "") + head.counts();
        int others = head.time().length()
                + 2
                + head.feed().length()
                + 2
                + counts.strip().length();
        int site = Math.max(LEAST_SITE, Math.min(head.site().length(), room - others - 3));
        column = piece(picture, column, room, clipped(head.site(), site), Style.STRONG);
        column = piece(picture, column, room, head.time(), Style.PLAIN);
        // what was lost stays in sight; words on the feed, however many, take what is left
        int kept = head.lost() ? counts.strip().length() + 2 : 0;
        int feedEnd = Math.max(column + Math.min(head.feed().length(), LEAST_FEED), room - kept);
        column = piece(picture, column, feedEnd, head.feed(), Style.of(head.feedTone()));
        piece(picture, Math.min(column, feedEnd + 2), room, counts.strip(), Style.PLAIN);
    }

    private static String clipped(String text, int width) {
        return text.length() <= width ? text : text.substring(0, width - 1) + "~";
    }

    private static int piece(Picture picture, int column, int room, String text, Style style) {
        picture.put(0, column, Math.max(0, room - column), text, style);
        return column + text.length() + 2;
    }

    static void keys(Picture picture, ScreenModel model) {
        int row = picture.height() - 1;
        int width = picture.width();
        if (model.acknowledging()) {
            picture.put(row, 0, width, "Ack:  " + line(model.ownKeys(), List.of(), width - 6), Style.SELECTED);
        } else if (!model.notice().isEmpty()) {
            picture.put(row, 0, width, model.notice(), Style.SELECTED);
        } else {
            picture.put(row, 0, width, line(model.ownKeys(), model.commonKeys(), width), Style.STRONG);
        }
    }

    /**
     * The keys with a word. Where the line is too long, those of all pages go first, from the end, then those of the page;
     * acknowledging, the list of pages and the help stay.
     */
    static String line(List<Binding> own, List<Binding> everywhere, int width) {
        List<Binding> shown = new ArrayList<>(own);
        shown.addAll(everywhere);
        shown.removeIf(b -> b.word().isEmpty());
        List<Binding> order = new ArrayList<>(everywhere);
        Collections.reverse(order);
        List<Binding> last = new ArrayList<>(own);
        Collections.reverse(last);
        order.addAll(last);
        for (Binding binding : order) {
            if (join(shown, NEAR).length() > width && !STAY.contains(binding.word())) {
                shown.remove(binding);
            }
        }
        String far = join(shown, FAR);
        return far.length() <= width ? far : join(shown, NEAR);
    }

    private static String join(List<Binding> bindings, String gap) {
        return bindings.stream().map(Binding::shown).collect(Collectors.joining(gap));
    }
}
