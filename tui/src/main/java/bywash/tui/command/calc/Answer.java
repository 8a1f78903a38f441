package bywash.tui.command.calc;

import java.util.ArrayList;
import java.util.List;

/** What a calculation found: numbers with units, remarks, the sources of the formulas, and cautions. */
final class Answer {
    /** One number with its unit; the unit is empty for pH and for bare ratios. */
    record Number(String name, double value, String unit) {}

    private final String title;
    private final List<Number> numbers = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private final List<String> sources = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();

    Answer(String title) {
        this.title = title;
    }

    Answer number(String name, double value, String unit) {
        numbers.add(new Number(name, value, unit));
        return this;
    }

    Answer remark(String remark) {
        remarks.add(remark);
        return this;
    }

    Answer source(String source) {
        sources.add(source);
        return this;
    }

    Answer caution(String caution) {
        cautions.add(caution);
        return this;
    }

    String title() {
        return title;
    }

    List<Number> numbers() {
        return numbers;
    }

    List<String> remarks() {
        return remarks;
    }

    List<String> sources() {
        return sources;
    }

    List<String> cautions() {
        return cautions;
    }
}
