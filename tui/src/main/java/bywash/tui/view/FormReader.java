package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.water.LabelStrength;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads the fields of a form one after the other and gathers what is wrong and what is to be warned of. */
final class FormReader {
    private static final double MOST_MASS_G = 1e7;
    private static final int MOST_FISH = 1_000_000;
    private static final int LONGEST = 60;

    private final Frame frame;
    private final Filled filled;
    private final StockUnits units;
    private final List<String> problems = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();

    FormReader(Frame frame, Filled filled) {
        this.frame = frame;
        this.filled = filled;
        this.units = StockUnits.of(frame);
    }

    Frame frame() {
        return frame;
    }

    StockUnits units() {
        return units;
    }

    void problem(String words) {
        problems.add(words);
    }

    /** @param words empty where there is nothing to warn of */
    void warn(String words) {
        if (!words.isEmpty()) {
            warnings.add(words);
        }
    }

    boolean blank(int field) {
        return filled.blank(field);
    }

    String choice(int field) {
        return filled.text(field);
    }

    Instant when(int field) {
        Instant at = EntryTime.parse(
                filled.text(field), frame.now(), frame.snapshot().site().timeZone());
        if (at == null) {
            problems.add(EntryTime.RIGHT);
            return frame.now();
        }
        return at;
    }

    double number(int field, String label, double low, double high) {
        double value = filled.number(field);
        if (!(value >= low && value <= high)) {
            problems.add(label + ": type a number, " + shown(low) + " to " + shown(high) + ".");
        }
        return value;
    }

    /** A label's strength in percent; the usual one of the chemical where it is left open. */
    double strength(int field, String reagent) {
        double percent = blank(field) ? LabelStrength.usualPercent(reagent) : filled.number(field);
        String problem = LabelStrength.problem(reagent, percent);
        if (!problem.isEmpty()) {
            problems.add(problem.substring(0, 1).toUpperCase(Locale.ROOT) + problem.substring(1) + ".");
        }
        return percent;
    }

    private static String shown(double value) {
        return value == Math.rint(value) ? Words.number(value, 0) : String.valueOf(value);
    }

    int count(int field, String label) {
        double value = filled.number(field);
        if (!(value >= 1 && value <= MOST_FISH && value == Math.rint(value))) {
            problems.add(label + ": type a whole number, 1 or more.");
            return 0;
        }
        return (int) value;
    }

    /** A mass as typed, in g. */
    double mass(int field, String label) {
        double grams = units.grams(filled.number(field));
        if (!(grams > 0 && grams <= MOST_MASS_G)) {
            problems.add(label + ": type " + units.massUnit() + ", above 0.");
        }
        return grams;
    }

    /** Masses typed one by one, in g. */
    List<Double> masses(int field, String label) {
        List<Double> all = filled.numbers(field).stream().map(units::grams).toList();
        if (all.stream().anyMatch(g -> !(g > 0 && g <= MOST_MASS_G))) {
            problems.add(label + ": type " + units.massUnit() + " of each fish with commas between, each above 0.");
        }
        return all;
    }

    /** A name that stands in entries and reports. */
    String name(int field, String label) {
        String text = filled.text(field);
        if (!text.matches("[\\p{L}\\p{N}][\\p{L}\\p{N} _.-]*") || text.length() > LONGEST) {
            problems.add(label + ": type a name of letters, digits and hyphens, such as spring-2.");
        }
        return text;
    }

    /** Words that may be left open; null where they are. */
    @org.jspecify.annotations.Nullable
    String words(int field, String label) {
        String text = filled.text(field);
        if (text.length() > LONGEST) {
            problems.add(label + ": at most " + LONGEST + " characters.");
        }
        return text.isEmpty() ? null : text;
    }

    Optional<CohortStatus> cohort(int field) {
        SeasonStatus season = frame.snapshot().season();
        Optional<CohortStatus> found = season == null
                ? Optional.empty()
                : season.cohorts().stream()
                        .filter(c -> c.id().equals(filled.text(field)))
                        .findFirst();
        if (found.isEmpty()) {
            problems.add("No cohort with fish is on record; enter Fish in first.");
        }
        return found;
    }

    boolean good() {
        return problems.isEmpty();
    }

    FormCheck open() {
        return FormCheck.open(problems, warnings);
    }

    /** The form's outcome: its entries, unless something is wrong or they name what is not there. */
    FormCheck done(String words, OperatorEntry... entries) {
        for (OperatorEntry entry : entries) {
            String wrong = problems.isEmpty() ? EntryCheck.problem(frame, entry) : "";
            if (!wrong.isEmpty()) {
                problems.add(wrong.substring(0, 1).toUpperCase(Locale.ROOT) + wrong.substring(1) + ".");
            }
        }
        return problems.isEmpty()
                ? new FormCheck(List.of(), warnings, List.of(entries), words)
                : FormCheck.open(problems, warnings);
    }
}
