package bywash.tui.command.calc;

import bywash.rules.water.LabelStrength;
import java.util.Arrays;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Reads what was typed after an option; each fault is one message with the option, what stood there and what would be right. */
final class Typed {
    private static final Pattern MEASURE =
            Pattern.compile("\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(\\S*)\\s*");

    private Typed() {}

    /** A measure in the first unit of its kind. */
    static double measure(String option, @Nullable String text, Dimension dimension) {
        if (text == null) {
            throw new IllegalArgumentException(
                    option + " is missing; give it as in " + option + " \"" + dimension.example() + "\"");
        }
        Matcher m = MEASURE.matcher(text);
        if (m.matches()) {
            for (Dimension.Unit unit : dimension.units()) {
                if (unit.symbol().equals(m.group(2))) {
                    return Double.parseDouble(m.group(1)) * unit.scale() + unit.offset();
                }
            }
        }
        String wanted =
                dimension == Dimension.PH ? "a number" : "a number with one of the units " + dimension.allowed();
        throw new IllegalArgumentException(
                option + " is \"" + text + "\"; it must be " + wanted + ", such as \"" + dimension.example() + "\"");
    }

    /** A measure, or another value where the option was not given. */
    static double measureOr(String option, @Nullable String text, Dimension dimension, double otherwise) {
        return text == null ? otherwise : measure(option, text, dimension);
    }

    /** A label's strength in percent, or that of the chemical as it is usually sold where the option was not given. */
    static double strength(@Nullable String text, String reagent) {
        double percent = measureOr("--strength", text, Dimension.PERCENT, LabelStrength.usualPercent(reagent));
        String problem = LabelStrength.problem(reagent, percent);
        if (!problem.isEmpty()) {
            throw new IllegalArgumentException("--" + problem);
        }
        return percent;
    }

    /** One of a closed list of words. */
    static <T> T word(String option, @Nullable String text, T[] values, Function<T, String> word) {
        for (T value : values) {
            if (word.apply(value).equals(text)) {
                return value;
            }
        }
        String allowed = Arrays.stream(values).map(word).collect(Collectors.joining(", "));
        String found = text == null ? " is missing" : " is \"" + text + "\"";
        throw new IllegalArgumentException(option + found + "; it must be one of " + allowed);
    }
}
