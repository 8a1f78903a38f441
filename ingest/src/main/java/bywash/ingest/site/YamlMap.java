package bywash.ingest.site;

import java.time.Duration;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** One mapping of the file. Each getter reports a fault with its line and gives null or NaN, so that reading goes on. */
final class YamlMap {
    private final Problems problems;
    private final String place;
    private final Node start;
    private final Map<String, Node> values = new LinkedHashMap<>();
    private final Map<String, Node> keys = new LinkedHashMap<>();

    /**
     * @param start where missing keys are reported
     * @param place prefix of messages, such as "vessel sump: "; empty at the top
     * @param allowed the keys that may stand here; empty for free ones
     */
    YamlMap(Problems problems, String place, Node start, MappingNode map, List<String> allowed) {
        this.problems = problems;
        this.place = place;
        this.start = start;
        for (NodeTuple entry : map.getValue()) {
            String key = entry.getKeyNode() instanceof ScalarNode s ? s.getValue() : "";
            if (!allowed.isEmpty() && !allowed.contains(key)) {
                fault(entry.getKeyNode(), "key " + quoted(key) + " is not known", KnownWords.advice(key, allowed));
            } else if (values.containsKey(key)) {
                fault(entry.getKeyNode(), "key " + quoted(key) + " stands twice", "each key once");
            } else {
                values.put(key, entry.getValueNode());
                keys.put(key, entry.getKeyNode());
            }
        }
    }

    /** The mapping at {@code node}, or null where something else stands there, which is reported. */
    static @Nullable YamlMap at(Problems problems, String place, @Nullable Node start, Node node, String... allowed) {
        if (node instanceof MappingNode map) {
            return new YamlMap(problems, place, start == null ? node : start, map, List.of(allowed));
        }
        problems.add(start == null ? node : start, place + "not a mapping", "keys with values: " + example(allowed));
        return null;
    }

    private static String example(String... allowed) {
        return allowed.length == 0 ? "name: value" : KnownWords.list(Arrays.asList(allowed));
    }

    static String quoted(String text) {
        return "\"" + Measure.shortened(text) + "\"";
    }

    void fault(Node at, String what, String right) {
        problems.add(at, place + what, right);
    }

    /** A fault of the value of a key, or of the mapping where the key is missing. */
    void fault(String key, String what, String right) {
        fault(keys.getOrDefault(key, start), what, right);
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    @Nullable
    Node node(String key) {
        return values.get(key);
    }

    @Nullable
    Node keyNode(String key) {
        return keys.get(key);
    }

    Iterable<String> names() {
        return keys.keySet();
    }

    void missing(String key, String right) {
        fault(start, key + " is missing", right);
    }

    /** The text of a key; null where it is missing. */
    @Nullable
    String text(String key) {
        Node node = values.get(key);
        if (node == null) {
            return null;
        }
        if (!(node instanceof ScalarNode scalar)) {
            fault(keys.getOrDefault(key, node), key + " is not a plain value", "one value, such as " + key + ": x");
            return null;
        }
        if (scalar.getTag().equals(Tag.NULL) || scalar.getValue().isBlank()) {
            fault(keys.getOrDefault(key, node), key + " has no value", "a value behind " + key + ":");
            return null;
        }
        return scalar.getValue();
    }

    @Nullable
    String required(String key, String right) {
        if (!has(key)) {
            missing(key, right);
        }
        return text(key);
    }

    /** A value with its unit, in the dimension's fixed unit; NaN where it is missing or faulty. */
    double measure(String key, Dimension dimension, double lowest, double highest) {
        String text = text(key);
        if (text == null) {
            return Double.NaN;
        }
        try {
            double value = Measure.parse(text, dimension);
            if (value >= lowest && value <= highest) {
                return value;
            }
            String unit = dimension == Dimension.PH ? "" : dimension.fixedUnit();
            fault(
                    key,
                    key + " " + Measure.shortened(text) + " is out of range",
                    Measure.format(lowest, unit) + " to " + Measure.format(highest, unit));
        } catch (Measure.NotAMeasure e) {
            fault(key, key + " " + e.what(), e.right());
        }
        return Double.NaN;
    }

    double measureOr(String key, Dimension dimension, double lowest, double highest, double otherwise) {
        return has(key) ? measure(key, dimension, lowest, highest) : otherwise;
    }

    Duration durationOr(String key, Duration lowest, Duration highest, Duration otherwise) {
        String text = text(key);
        if (text == null) {
            return otherwise;
        }
        try {
            Duration value = Measure.parseDuration(text);
            if (value.compareTo(lowest) >= 0 && value.compareTo(highest) <= 0) {
                return value;
            }
            fault(
                    key,
                    key + " " + Measure.shortened(text) + " is out of range",
                    Measure.format(lowest) + " to " + Measure.format(highest));
        } catch (Measure.NotAMeasure e) {
            fault(key, key + " " + e.what(), e.right());
        }
        return otherwise;
    }

    /** One word of an enum; null where it is missing or not known. */
    <E extends Enum<E>> @Nullable E word(String key, E[] allowed, Function<E, String> word) {
        String text = text(key);
        return text == null ? null : word(keys.getOrDefault(key, start), key, text, allowed, word);
    }

    <E extends Enum<E>> @Nullable E word(Node at, String key, String text, E[] allowed, Function<E, String> word) {
        for (E e : allowed) {
            if (word.apply(e).equals(text)) {
                return e;
            }
        }
        List<String> words = Arrays.stream(allowed).map(word).toList();
        fault(at, key + " " + quoted(text) + " is not known", KnownWords.advice(text, words));
        return null;
    }

    /** Whether a name is made as ids are; reports it where not. */
    boolean idHolds(Node at, String what, String id) {
        if (id.matches("[a-z0-9-]{1,64}")) {
            return true;
        }
        fault(at, what + " " + quoted(id) + " is not an id", "lower-case letters, digits and hyphens, at most 64");
        return false;
    }
}
