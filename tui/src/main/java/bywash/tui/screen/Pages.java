package bywash.tui.screen;

import bywash.tui.screen.HelpPage.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All pages of one sitting, in the order of the list of pages, and the keys that work on every one of them. */
final class Pages {
    private final List<Page> all;
    private final List<Binding> everywhere;

    Pages(boolean goesOn, AlarmChoice choice, HelpSource help, Bell bell, Binding acknowledge) {
        List<Page> forms = List.of(
                new TestsPage(),
                new FeedPage(),
                new BatchFillPage(),
                new BatchTreatPage(),
                new NotePage(),
                new ShelvePage(choice),
                new FishInPage(),
                new WeighPage(),
                new HarvestPage(),
                new FishLostPage(),
                new FishMovedPage(),
                new StockingPage(),
                new PlantPage(),
                new CropHarvestPage(),
                new BedStatePage(),
                new DosePage(),
                new PhPlanPage(),
                new CalibrationPage(),
                new ProbeCaredPage(),
                new WithdrawPage());
        List<Page> pages = new ArrayList<>(List.of(
                new OverviewPage(choice),
                new DetailPage(choice),
                new TrendsPage(),
                new TopUpPage(),
                new EndTopUpPage(),
                new SheetPage(),
                new ChlorinePage(),
                new BatchesPage(),
                new RecoveryPage(),
                new EntriesPage(forms),
                new LogPage(),
                new ReplayPage()));
        // A new page goes here: pages.add(...), and nowhere else; a form that is to stand under n goes into forms.
        pages.addAll(List.of(
                new StockPage(),
                new NitrogenPage(),
                new ProbeCarePage(),
                new BalancePage(),
                new AlarmPerformancePage()));
        pages.addAll(forms);
        pages.add(new PagesPage(this::all));
        pages.add(new HelpPage(() -> help.sections()));
        pages.add(new LeavePage(goesOn));
        all = List.copyOf(pages);
        everywhere = everywhere(bell, acknowledge);
    }

    /** Gives the help its sections. */
    interface HelpSource {
        List<Section> sections();
    }

    private List<Binding> everywhere(Bell bell, Binding acknowledge) {
        List<Binding> keys = new ArrayList<>();
        keys.add(acknowledge);
        keys.add(Binding.of(KeyPress.Kind.ESCAPE, "back", "Back to where you came from", f -> new Effect.Back()));
        for (Page page : all) {
            Character letter = page.letter();
            if (letter != null) {
                Binding opens =
                        Binding.of(letter, page.barWord(), page.purpose(), f -> new Effect.Open(page.getClass()));
                keys.add(letter == 'h' ? opens.or(KeyPress.of('?')) : opens);
            }
        }
        keys.add(bell.key());
        keys.addAll(ReplayPage.everywhere());
        keys.add(Binding.of(
                KeyPress.Kind.INTERRUPT, "", "Leave at once: the terminal is put back", f -> new Effect.Quit()));
        return List.copyOf(keys);
    }

    List<Page> all() {
        return all;
    }

    /** Keys of all pages; where letters are text, only those that are no letters. */
    List<Binding> everywhere(boolean typing) {
        return typing ? everywhere.stream().flatMap(b -> unlettered(b).stream()).toList() : everywhere;
    }

    private static Optional<Binding> unlettered(Binding binding) {
        List<KeyPress> keys = binding.keys().stream()
                .filter(k -> k.kind() != KeyPress.Kind.CHARACTER)
                .toList();
        return keys.isEmpty()
                ? Optional.empty()
                : Optional.of(new Binding(keys, binding.word(), binding.sentence(), binding.deed()));
    }

    Page get(Class<? extends Page> type) {
        return all.stream().filter(p -> p.getClass() == type).findFirst().orElseThrow();
    }

    /** What the key does on the page: its own keys come first. */
    Optional<Binding> find(Page page, KeyPress key) {
        return java.util.stream.Stream.concat(page.keys().stream(), everywhere(page.typing()).stream())
                .filter(b -> b.has(key))
                .findFirst();
    }
}
