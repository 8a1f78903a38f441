package bywash.tui.screen;

import bywash.tui.screen.HelpPage.Section;
import bywash.tui.view.Frame;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Where the grower is; key presses move it. Knows no terminal and no clock. Pages lie on one another: a letter lays one on
 * top, Esc takes it off again; the overview lies at the bottom.
 */
public final class ScreenModel {
    private final AlarmChoice choice = new AlarmChoice();
    private final Acknowledging acknowledging = new Acknowledging(choice);
    private final Bell bell = new Bell();
    private final Pages pages;
    private final Deque<Page> under = new ArrayDeque<>();
    private Page page;
    private String notice = "";

    public ScreenModel() {
        this(false);
    }

    /** @param goesOn whether the watch goes on when the grower leaves the screen */
    public ScreenModel(boolean goesOn) {
        pages = new Pages(
                goesOn,
                choice,
                this::help,
                bell,
                Binding.of('a', "ack", "Acknowledge; asks whether all or the chosen one", this::ask)
                        .or(KeyPress.of(KeyPress.Kind.CONTROL_A)));
        page = pages.get(OverviewPage.class);
    }

    /** The page to draw. */
    public Page page() {
        return page;
    }

    /** Whether the next key says what to acknowledge. */
    boolean acknowledging() {
        return acknowledging.open();
    }

    /** What was just done, in words; empty after the next key. */
    String notice() {
        return notice;
    }

    /** Words for the bottom line until the next key. */
    void say(String words) {
        notice = words;
    }

    Bell bell() {
        return bell;
    }

    AlarmChoice choice() {
        return choice;
    }

    Pages pages() {
        return pages;
    }

    /** The keys of the page, or those that say what to acknowledge. */
    List<Binding> ownKeys() {
        return acknowledging.open() ? acknowledging.keys() : page.keys();
    }

    /** The keys of all pages that lead somewhere now. */
    List<Binding> commonKeys() {
        if (acknowledging.open()) {
            return List.of();
        }
        List<Binding> keys = new ArrayList<>(pages.everywhere(page.typing()));
        if (under.isEmpty()) {
            keys.removeIf(b -> b.has(KeyPress.of(KeyPress.Kind.ESCAPE)));
        }
        keys.removeIf(b -> page.keys().stream().anyMatch(own -> own.keys().equals(b.keys())));
        return keys;
    }

    /** Takes a key; what comes back is for the world outside the screen, or a redraw. */
    public Effect handle(KeyPress key, Frame frame) {
        if (key.kind() == KeyPress.Kind.HANG_UP || key.kind() == KeyPress.Kind.INTERRUPT) {
            return new Effect.Quit();
        }
        notice = "";
        if (acknowledging.open()) {
            return acknowledge(key, frame);
        }
        Binding binding = pages.find(page, key).orElse(null);
        if (binding != null) {
            return settle(binding.deed().on(frame), frame);
        }
        if (key.kind() == KeyPress.Kind.CHARACTER) {
            page.type(key.character());
        }
        return new Effect.Redraw();
    }

    private Effect acknowledge(KeyPress key, Frame frame) {
        for (Binding binding : acknowledging.keys()) {
            if (binding.has(key)) {
                return settle(binding.deed().on(frame), frame);
            }
        }
        acknowledging.close();
        return new Effect.Redraw();
    }

    private Effect ask(Frame frame) {
        return acknowledging.ask(frame, page instanceof DetailPage);
    }

    /** Does what concerns the screen itself. */
    private Effect settle(Effect effect, Frame frame) {
        switch (effect.kind()) {
            case SAY -> notice = ((Effect.Say) effect).words();
            case OPEN -> open(pages.get(((Effect.Open) effect).page()), frame);
            case BACK -> back();
            case ENTER -> {
                Effect.Enter enter = (Effect.Enter) effect;
                notice = enter.words();
                if (enter.leaves()) {
                    back();
                }
            }
            case REDRAW, PLAY, QUIT -> {
                // the sitting's own business
            }
        }
        return effect;
    }

    private void open(Page to, Frame frame) {
        notice = to.shut(frame);
        if (!notice.isEmpty() || to == page) {
            return;
        }
        if (under.contains(to)) {
            while (page != to) {
                back();
            }
        } else {
            under.push(page);
            page = to;
        }
        page.opened(frame);
    }

    private void back() {
        if (!under.isEmpty()) {
            page = under.pop();
        }
    }

    private List<Section> help() {
        List<Section> sections = new ArrayList<>();
        Page from = under.isEmpty() ? page : under.peek();
        sections.add(new Section("ON " + from.title().toUpperCase(Locale.ROOT), besidesScrolling(from)));
        sections.add(new Section("ON EVERY PAGE", pages.everywhere(false)));
        sections.add(new Section("AFTER a", acknowledging.keys()));
        sections.add(new Section("ON PAGES LONGER THAN THE SCREEN", new HelpPage(List::of).scrolling()));
        Map<List<String>, List<Page>> alike = new LinkedHashMap<>();
        for (Page other : pages.all()) {
            if (other != from) {
                List<String> keys = besidesScrolling(other).stream()
                        .map(b -> b.labels() + b.sentence())
                        .toList();
                alike.computeIfAbsent(keys, k -> new ArrayList<>()).add(other);
            }
        }
        alike.values().forEach(same -> {
            String names = same.stream().map(Page::title).collect(Collectors.joining(", "));
            sections.add(new Section("ON " + names.toUpperCase(Locale.ROOT), besidesScrolling(same.get(0))));
        });
        return sections;
    }

    private static List<Binding> besidesScrolling(Page page) {
        return page instanceof ScrollPage scroll ? scroll.ownKeys() : page.keys();
    }
}
