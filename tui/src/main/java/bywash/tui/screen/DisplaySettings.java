package bywash.tui.screen;

import java.util.Locale;
import java.util.Map;

/**
 * What the terminal can show.
 *
 * @param unicode whether bars and lines beyond ASCII may be sent
 * @param colour whether colour may be sent
 * @param dumb whether the terminal cannot be drawn on at all
 * @param manyColours whether it has 256 colours, whose red and amber can be told apart better than those of the 16
 */
public record DisplaySettings(boolean unicode, boolean colour, boolean dumb, boolean manyColours) {

    /** With 16 colours. */
    public DisplaySettings(boolean unicode, boolean colour, boolean dumb) {
        this(unicode, colour, dumb, false);
    }

    /** From TERM, COLORTERM, NO_COLOR (any non-empty value), LC_ALL, LC_CTYPE and LANG. */
    public static DisplaySettings from(Map<String, String> environment) {
        String term = environment.getOrDefault("TERM", "dumb");
        boolean dumb = term.isEmpty() || term.equals("dumb");
        boolean plain = !environment.getOrDefault("NO_COLOR", "").isEmpty();
        boolean mono = term.endsWith("-m") || term.endsWith("-mono") || term.equals("vt100") || term.equals("vt220");
        boolean coloured = !environment.getOrDefault("COLORTERM", "").isEmpty() || !mono;
        boolean colour = !dumb && !plain && coloured;
        boolean many = term.contains("256color")
                || !environment.getOrDefault("COLORTERM", "").isEmpty();
        return new DisplaySettings(utf8(environment), colour, dumb, colour && many);
    }

    private static boolean utf8(Map<String, String> environment) {
        for (String name : new String[] {"LC_ALL", "LC_CTYPE", "LANG"}) {
            String value = environment.getOrDefault(name, "");
            if (!value.isEmpty()) {
                String locale = value.toUpperCase(Locale.ROOT);
                return locale.contains("UTF-8") || locale.contains("UTF8");
            }
        }
        return false;
    }
}
