package bywash.rules.text;

import java.util.Locale;
import java.util.regex.Pattern;

/** A sentence with numbers in it: a point before the decimals everywhere, and never a minus before a zero. */
public final class Sentence {
    private static final Pattern MINUS_ZERO = Pattern.compile("(?<![\\w.])-(0(?:\\.0+)?)(?!\\d|\\.\\d|\\w)");

    private Sentence() {}

    /** @param format as of {@link String#format}; a value that rounds to zero is written without a minus */
    public static String of(String format, Object... values) {
        String text = String.format(Locale.ROOT, format, values);
        return text.contains("-0") ? MINUS_ZERO.matcher(text).replaceAll("$1") : text;
    }
}
