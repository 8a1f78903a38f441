package bywash.tui.view;

import java.util.List;

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
        try {
            return blank(field) ? Double.NaN : Double.parseDouble(text(field));
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
