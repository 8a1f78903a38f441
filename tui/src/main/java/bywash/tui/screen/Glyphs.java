package bywash.tui.screen;

import java.util.List;

/** The few characters that differ between a UTF-8 and an ASCII terminal. */
public record Glyphs(char line, char full, char empty, char pointer, String steps) {
    private static final Glyphs UNICODE = new Glyphs('─', '█', '·', '▶', "▁▂▃▄▅▆▇█");
    private static final Glyphs ASCII = new Glyphs('-', '#', '.', '>', "_.-'");

    static Glyphs of(boolean unicode) {
        return unicode ? UNICODE : ASCII;
    }

    /** A level as a bar of this many cells; blanks while unknown. */
    public String bar(double share, int cells) {
        if (Double.isNaN(share)) {
            return " ".repeat(cells);
        }
        int filled = (int) Math.round(share * cells);
        return String.valueOf(full).repeat(filled) + String.valueOf(empty).repeat(cells - filled);
    }

    /** A small trend; its height is the range of the values, but never less than the least span. */
    public String trend(List<Double> values, double leastSpan) {
        double low = values.stream()
                .filter(Double::isFinite)
                .mapToDouble(v -> v)
                .min()
                .orElse(0);
        double high = values.stream()
                .filter(Double::isFinite)
                .mapToDouble(v -> v)
                .max()
                .orElse(0);
        double middle = (low + high) / 2;
        double span = Math.max(leastSpan, high - low);
        StringBuilder line = new StringBuilder();
        for (double value : values) {
            double share = (value - middle) / span + 0.5;
            int step = (int) Math.max(0, Math.min(steps.length() - 1.0, Math.floor(share * steps.length())));
            line.append(Double.isFinite(value) ? steps.charAt(step) : ' ');
        }
        return line.toString();
    }
}
