package bywash.tui.view;

import java.util.List;
import java.util.stream.Stream;

/** What stands in the fields of a form, in order, as typed or chosen. */
public record Filled(List<String> texts) {
    public Filled {
        texts = List.copyOf(texts);
    }

    public String text(int field) {
        return texts.get(field).strip();
    }

    public boolean blank(int field) {
        return text(field).isEmpty();
    }

    /** The number typed; NaN while it is none. */
    public double number(int field) {
        return number(text(field));
    }

    /** The numbers of a list, NaN for each that is none. */
    public List<Double> numbers(int field) {
        return blank(field)
                ? List.of()
                : Stream.of(text(field).split("[,\\s]+"))
                        .filter(part -> !part.isEmpty())
                        .map(Filled::number)
                        .toList();
    }

    private static double number(String text) {
        try {
            return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
