package bywash.rules.text;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;

/** Ids of the site file and of entries as a grower says them: {@code potassium-bicarbonate} is potassium bicarbonate. */
public final class Names {
    /** Parts of a fish's name that come of a place or a person. */
    private static final Set<String> PROPER =
            Set.of("african", "american", "arctic", "asian", "atlantic", "european", "mozambique", "murray", "nile");

    private Names() {}

    /** With blanks for hyphens. */
    public static String words(String id) {
        return id.replace('-', ' ');
    }

    /** A unit in a sentence: {@code Cel}, as UCUM and site files write it, is C. */
    public static String unit(String symbol) {
        return symbol.equals("Cel") ? "C" : symbol;
    }

    /** A species: {@code nile-tilapia} is Nile tilapia. */
    public static String species(String id) {
        return Arrays.stream(id.split("-"))
                .map(part -> PROPER.contains(part)
                        ? part.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + part.substring(1)
                        : part)
                .collect(Collectors.joining(" "));
    }
}
