package bywash.tui.screen;

import bywash.tui.view.Frame;
import java.util.List;
import java.util.function.Supplier;

/** The list of pages, with the letter that opens each. */
final class PagesPage extends ScrollPage {
    private static final int INDENT = 23;

    private final Supplier<List<Page>> pages;

    PagesPage(Supplier<List<Page>> pages) {
        this.pages = pages;
    }

    @Override
    public String title() {
        return "Pages";
    }

    @Override
    public String purpose() {
        return "This list";
    }

    @Override
    public Character letter() {
        return 'p';
    }

    @Override
    public String barWord() {
        return "pages";
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        Lines lines = new Lines(width);
        for (Page page : pages.get()) {
            Character letter = page.letter();
            if (letter != null) {
                lines.add(letter + "   " + page.title(), INDENT, page.purpose(), Style.PLAIN);
            }
        }
        return lines;
    }
}
