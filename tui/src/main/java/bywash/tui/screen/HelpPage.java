package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Words;
import java.util.List;
import java.util.function.Supplier;

/** Every key of every page, made from the key maps themselves; those of the page one came from stand first. */
final class HelpPage extends ScrollPage {
    private static final int INDENT = 21;

    /** Keys under one name. */
    record Section(String name, List<Binding> keys) {}

    private final Supplier<List<Section>> sections;

    HelpPage(Supplier<List<Section>> sections) {
        this.sections = sections;
    }

    @Override
    public String title() {
        return "Keys";
    }

    @Override
    public String purpose() {
        return "All keys of all pages";
    }

    @Override
    public Character letter() {
        return 'h';
    }

    @Override
    public String barWord() {
        return "help";
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        Lines lines = new Lines(width);
        boolean first = true;
        for (Section section : sections.get()) {
            if (section.keys().isEmpty()) {
                continue;
            }
            if (!first) {
                lines.gap();
            }
            first = false;
            Words.wrap(section.name(), width).forEach(lines::heading);
            for (Binding binding : section.keys()) {
                if (binding.sentence().isEmpty()) {
                    continue; // said with another key
                }
                lines.add(binding.labels(), INDENT, binding.sentence(), Style.PLAIN);
            }
        }
        lines.gap();
        return lines.add("!! critical, ! high or lower. ~ at the end of a text: it was cut.", Style.PLAIN)
                .add("Estimates are no test: confirm chlorine with a DPD kit.", Style.PLAIN);
    }
}
