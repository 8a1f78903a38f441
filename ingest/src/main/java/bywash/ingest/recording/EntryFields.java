package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.Measure;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The fields of one operator entry, taken out by name and kind; each fault says which field. */
final class EntryFields {
    private final String word;
    private final Map<String, Object> fields;

    /** @param fields values are String, BigDecimal, Boolean or List of these */
    EntryFields(String word, Map<String, Object> fields) {
        this.word = word;
        this.fields = fields;
    }

    boolean has(String name) {
        return fields.containsKey(name);
    }

    String text(String name) throws BrokenEntry {
        String text = textOrNull(name);
        if (text == null) {
            throw new BrokenEntry(word + " has no \"" + name + "\"", "\"" + name + "\" with its text");
        }
        return text;
    }

    @Nullable
    String textOrNull(String name) throws BrokenEntry {
        Object value = fields.get(name);
        if (value == null || value instanceof String) {
            return (String) value;
        }
        throw new BrokenEntry("\"" + name + "\" of " + word + " is not a text", "a text in quotes");
    }

    double measure(String name, Dimension dimension, double lowest, double highest) throws BrokenEntry {
        Object value = fields.get(name);
        if (value instanceof BigDecimal number) {
            value = number.toString();
        }
        return measured(name, value, dimension, lowest, highest);
    }

    /** NaN where the field is missing. */
    double measureOrNone(String name, Dimension dimension, double highest) throws BrokenEntry {
        return has(name) ? measure(name, dimension, 0, highest) : Double.NaN;
    }

    List<Double> measures(String name, Dimension dimension, double highest) throws BrokenEntry {
        if (!(fields.get(name) instanceof List<?> list)) {
            throw new BrokenEntry(
                    "\"" + name + "\" of " + word + " is not a list",
                    "a list such as [\"" + Measure.format(412, dimension.fixedUnit()) + "\"]");
        }
        List<Double> values = new ArrayList<>();
        for (Object value : list) {
            values.add(measured(name, value, dimension, 0, highest));
        }
        return values;
    }

    private double measured(String name, @Nullable Object value, Dimension dimension, double lowest, double highest)
            throws BrokenEntry {
        String right = dimension.phrase() + " in " + dimension.allowed();
        if (!(value instanceof String text)) {
            throw new BrokenEntry(
                    value == null
                            ? word + " has no \"" + name + "\""
                            : "\"" + name + "\" of " + word + " is not a text",
                    right);
        }
        try {
            double v = Measure.parse(text, dimension);
            if (!(v >= lowest && v <= highest)) {
                String unit = dimension.fixedUnit();
                throw new BrokenEntry(
                        "\"" + name + "\" of " + word + " is out of range",
                        Measure.format(lowest, unit) + " to " + Measure.format(highest, unit));
            }
            return v;
        } catch (Measure.NotAMeasure e) {
            throw new BrokenEntry("\"" + name + "\" of " + word + ": " + e.what(), e.right());
        }
    }

    Duration duration(String name) throws BrokenEntry {
        try {
            Duration d = Measure.parseDuration(text(name));
            if (d.isNegative() || d.compareTo(Duration.ofDays(365)) > 0) {
                throw new BrokenEntry("\"" + name + "\" of " + word + " is out of range", "0 s to 365 d");
            }
            return d;
        } catch (Measure.NotAMeasure e) {
            throw new BrokenEntry("\"" + name + "\" of " + word + ": " + e.what(), e.right());
        }
    }

    int count(String name) throws BrokenEntry {
        if (fields.get(name) instanceof BigDecimal n
                && n.scale() <= 0
                && n.precision() - n.scale() <= 7
                && n.signum() >= 0) {
            return n.intValue();
        }
        throw new BrokenEntry(
                has(name) ? "\"" + name + "\" of " + word + " is not a count" : word + " has no \"" + name + "\"",
                "a whole number, 0 to 9999999");
    }

    /** A flat list of texts; a number counts as its text. */
    List<String> texts(String name) throws BrokenEntry {
        if (!(fields.get(name) instanceof List<?> list)) {
            throw new BrokenEntry("\"" + name + "\" of " + word + " is not a list", "a list of texts");
        }
        return list.stream().map(String::valueOf).toList();
    }

    /** Which of the words stands there: 0, 1 and so on. */
    int oneOf(String name, String... words) throws BrokenEntry {
        String text = textOrNull(name);
        for (int i = 0; i < words.length; i++) {
            if (words[i].equals(text)) {
                return i;
            }
        }
        throw new BrokenEntry(
                text == null
                        ? word + " has no \"" + name + "\""
                        : "\"" + name + "\" of " + word + " is \"" + JsonLines.shown(text) + "\"",
                String.join(" or ", words));
    }
}
