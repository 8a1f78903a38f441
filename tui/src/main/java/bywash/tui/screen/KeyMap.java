package bywash.tui.screen;

import static bywash.tui.screen.Page.ACKNOWLEDGE;
import static bywash.tui.screen.Page.DETAIL;
import static bywash.tui.screen.Page.END_TOP_UP;
import static bywash.tui.screen.Page.HELP;
import static bywash.tui.screen.Page.OVERVIEW;
import static bywash.tui.screen.Page.QUIT;
import static bywash.tui.screen.Page.TOP_UP;

import bywash.tui.screen.KeyPress.Kind;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Every key there is. The bottom line and the help are made from it, so neither can leave one out. */
final class KeyMap {
    /** @param shown whether the bottom line has it too */
    record Binding(KeyPress key, Command command, Set<Page> pages, boolean shown) {}

    private static final Set<Page> MAIN = EnumSet.of(OVERVIEW, DETAIL);
    private static final Set<Page> FORMS = EnumSet.of(TOP_UP, END_TOP_UP);
    private static final Set<Page> ANYWHERE = EnumSet.of(OVERVIEW, DETAIL, TOP_UP, END_TOP_UP, HELP, QUIT);
    private static final List<Binding> BINDINGS = bindings();

    private KeyMap() {}

    private static List<Binding> bindings() {
        List<Binding> all = new ArrayList<>();
        bind(all, KeyPress.of('a'), Command.ACKNOWLEDGE, ANYWHERE, true);
        bind(all, KeyPress.of('a'), Command.ACKNOWLEDGE_ALL, EnumSet.of(ACKNOWLEDGE), true);
        bind(all, KeyPress.of(Kind.ENTER), Command.ACKNOWLEDGE_ONE, EnumSet.of(ACKNOWLEDGE), true);
        bind(all, KeyPress.of(Kind.ENTER), Command.OPEN, EnumSet.of(OVERVIEW), true);
        bind(all, KeyPress.of(Kind.RIGHT), Command.OPEN, EnumSet.of(OVERVIEW), false);
        bind(all, KeyPress.of(Kind.ENTER), Command.CONFIRM, FORMS, true);
        bind(all, KeyPress.of(Kind.UP), Command.PREVIOUS, EnumSet.of(OVERVIEW, DETAIL, TOP_UP, ACKNOWLEDGE), false);
        bind(all, KeyPress.of(Kind.DOWN), Command.NEXT, EnumSet.of(OVERVIEW, DETAIL, TOP_UP, ACKNOWLEDGE), true);
        bind(all, KeyPress.of(Kind.TAB), Command.NEXT_NEW, MAIN, false);
        bind(all, KeyPress.of(Kind.TAB), Command.NEXT, EnumSet.of(TOP_UP), false);
        bind(all, KeyPress.of(Kind.BACK_TAB), Command.PREVIOUS, EnumSet.of(TOP_UP), false);
        bind(all, KeyPress.of(Kind.RIGHT), Command.NEXT_CHOICE, EnumSet.of(TOP_UP), true);
        bind(all, KeyPress.of(Kind.LEFT), Command.PREVIOUS_CHOICE, EnumSet.of(TOP_UP), false);
        bind(all, KeyPress.of(Kind.BACKSPACE), Command.ERASE, EnumSet.of(TOP_UP), false);
        bind(all, KeyPress.of('t'), Command.TOP_UP, MAIN, true);
        bind(all, KeyPress.of('e'), Command.END_TOP_UP, MAIN, true);
        bind(all, KeyPress.of('y'), Command.LEAVE_NOW, EnumSet.of(QUIT), true);
        bind(all, KeyPress.of(Kind.ESCAPE), Command.BACK, EnumSet.complementOf(EnumSet.of(OVERVIEW)), true);
        bind(all, KeyPress.of(Kind.LEFT), Command.BACK, EnumSet.of(DETAIL), false);
        bind(all, KeyPress.of('h'), Command.HELP, EnumSet.of(OVERVIEW, DETAIL, TOP_UP, END_TOP_UP), true);
        bind(all, KeyPress.of('?'), Command.HELP, EnumSet.of(OVERVIEW, DETAIL, TOP_UP, END_TOP_UP), false);
        bind(all, KeyPress.of('q'), Command.LEAVE, EnumSet.of(OVERVIEW, DETAIL, TOP_UP, END_TOP_UP, HELP), true);
        bind(all, KeyPress.of(Kind.INTERRUPT), Command.LEAVE_NOW, EnumSet.allOf(Page.class), false);
        return List.copyOf(all);
    }

    private static void bind(List<Binding> all, KeyPress key, Command command, Set<Page> pages, boolean shown) {
        all.add(new Binding(key, command, Set.copyOf(pages), shown));
    }

    static Optional<Command> find(Page page, KeyPress key) {
        return on(page).stream()
                .filter(b -> b.key().equals(key))
                .map(Binding::command)
                .findFirst();
    }

    static List<Binding> on(Page page) {
        return BINDINGS.stream().filter(b -> b.pages().contains(page)).toList();
    }

    /** The bottom line of a page; where it is too long, the help stays and those before it go. */
    static String line(Page page, int width) {
        List<Binding> shown =
                new ArrayList<>(on(page).stream().filter(Binding::shown).toList());
        String line = join(shown);
        for (int i = shown.size() - 1; i > 0 && line.length() > width; i--) {
            if (shown.get(i).command() != Command.HELP) {
                shown.remove(i);
                line = join(shown);
            }
        }
        return line;
    }

    private static String join(List<Binding> bindings) {
        return bindings.stream()
                .map(b -> b.key().label() + " " + b.command().word())
                .collect(Collectors.joining("   "));
    }
}
