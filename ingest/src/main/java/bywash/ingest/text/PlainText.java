package bywash.ingest.text;

import java.util.regex.Pattern;

/** Makes text from outside safe for a terminal, a log and a line of a message. */
public final class PlainText {
    private static final Pattern UNFIT = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]");

    private PlainText() {}

    /**
     * Blanks in place of control characters, line ends, lone surrogates and marks that turn text round; cut short with
     * three points.
     *
     * @param most characters at most, from 4
     */
    public static String of(String text, int most) {
        String whole = text.length() <= most ? text : text.substring(0, most - 3) + "...";
        return UNFIT.matcher(whole).replaceAll(" ");
    }

    /** The same JSON with everything unfit for a terminal, line ends between its parts aside, as an escape. */
    public static String escaped(String json) {
        return UNFIT.matcher(json)
                .replaceAll(found -> found.group().equals("\n")
                        ? "\n"
                        : String.format("\\\\u%04x", (int) found.group().charAt(0)));
    }
}
