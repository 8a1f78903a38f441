package bywash.tui.screen;

import java.util.List;

/**
 * The few characters that differ between a UTF-8 and an ASCII terminal.
 *
 * @param band empty, but within the normal band
 * @param limit an end of the good band in a plot
 * @param parts a cell filled from below, from nothing to full, in equal parts
 */
public record Glyphs(
        char line,
        char full,
        char empty,
        char band,
        char pointer,
        char wall,
        char thickWall,
        char corner,
        char otherCorner,
        char cursor,
        char limit,
        char tick,
        String steps,
        String parts,
        boolean braille) {
    private static final Glyphs UNICODE =
            new Glyphs('─', '█', '·', '░', '▶', '│', '┃', '└', '┘', '┊', '┄', '╵', "▁▂▃▄▅▆▇█", " ▁▂▃▄▅▆▇█", true);
    private static final Glyphs ASCII =
            new Glyphs('-', '#', '.', '-', '>', '|', 'H', '+', '+', ':', '.', '\'', "_.-'", " _#", false);

    static Glyphs of(boolean unicode) {
        return unicode ? UNICODE : ASCII;
    }

    /** A cell filled from below by a share; below 0 empty, above 1 full. */
    char part(double share) {
        int last = parts.length() - 1;
        return Double.isNaN(share)
                ? parts.charAt(0)
                : parts.charAt((int) Math.max(0, Math.min(last, Math.round(share * last))));
    }

    /** A share as a bar of this many cells; blanks while unknown. */
    public String bar(double share, int cells) {
        return bar(share, cells, Double.NaN, Double.NaN);
    }

    /** The same with a band marked where it is empty; blanks while unknown. */
    public String bar(double share, int cells, double low, double high) {
        if (Double.isNaN(share)) {
            return " ".repeat(cells);
        }
        long filled = Math.round(share * cells);
        StringBuilder bar = new StringBuilder();
        for (int i = 0; i < cells; i++) {
            boolean usual = (i + 1.0) / cells > low && (double) i / cells < high;
            bar.append(i < filled ? full : usual ? band : empty);
        }
        return bar.toString();
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
