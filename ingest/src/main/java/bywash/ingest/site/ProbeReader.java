package bywash.ingest.site;

import bywash.rules.site.Device;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Vessel;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Reads the probes and how their readings stand in the feed. */
final class ProbeReader {
    private static final String[] KEYS = {
        "id", "vessel", "quantity", "topic", "payload", "unit", "every", "name", "mount", "device"
    };

    private final Problems problems;
    private final List<Vessel> vessels;
    private final Predicate<String> shaped;
    private final Map<String, String> ids = new HashMap<>();
    private final Map<String, String> fields = new HashMap<>();

    /** @param shaped tells the vessels that have a shape, be it a faulty one, which is a fault of its own */
    ProbeReader(Problems problems, List<Vessel> vessels, Predicate<String> shaped) {
        this.problems = problems;
        this.shaped = shaped;
        this.vessels = vessels;
    }

    List<ProbeBinding> read(YamlMap top) {
        List<ProbeBinding> bindings = new ArrayList<>();
        Node node = top.node("probes");
        if (node == null) {
            top.missing("probes", "a list with at least one probe");
        } else if (!(node instanceof SequenceNode list) || list.getValue().isEmpty()) {
            top.fault(
                    "probes", "probes is not a list of probes", "a list with at least one probe, each behind a hyphen");
        } else {
            int number = 0;
            for (Node probe : list.getValue()) {
                number++;
                YamlMap map = YamlMap.at(problems, "probe " + label(probe, number) + ": ", null, probe, KEYS);
                ProbeBinding binding = map == null ? null : probe(map, probe);
                if (binding != null) {
                    bindings.add(binding);
                }
            }
        }
        return bindings;
    }

    private static String label(Node probe, int number) {
        if (probe instanceof MappingNode map) {
            for (var entry : map.getValue()) {
                if (entry.getKeyNode() instanceof ScalarNode key
                        && key.getValue().equals("id")
                        && entry.getValueNode() instanceof ScalarNode value) {
                    return Measure.shortened(value.getValue());
                }
            }
        }
        return "no. " + number;
    }

    private @Nullable ProbeBinding probe(YamlMap map, Node node) {
        String id = map.required("id", "id: such as sump-level");
        if (id != null && map.idHolds(node, "id", id) && ids.put(id, id) != null) {
            map.fault("id", "id " + YamlMap.quoted(id) + " is taken by a probe above", "another id");
        }
        Vessel vessel = vessel(map);
        Quantity quantity = map.word("quantity", Quantity.values(), Quantity::word);
        if (!map.has("quantity")) {
            map.missing(
                    "quantity",
                    KnownWords.list(List.of("level", "temperature", "ph", "dissolved-oxygen", "orp", "...")));
        }
        if (quantity == Quantity.LEVEL && vessel != null && !shaped.test(vessel.id())) {
            map.fault("vessel", "a level in " + vessel.id() + ", which has no shape", "a shape for " + vessel.id());
        }
        Device device = map.word("device", Device.values(), Device::word);
        if (map.has("device") && quantity != null && quantity != Quantity.STATE) {
            map.fault("device", "device goes with quantity state only", "quantity: state, or no device");
        }
        Duration every = map.durationOr("every", Duration.ofSeconds(1), Duration.ofDays(1), Duration.ofSeconds(10));
        String topic = topic(map);
        ProbeBinding.PayloadFormat format = new PayloadReader(problems).read(map);
        String unit = quantity == null ? null : unit(map, quantity, format);
        double mount = mount(map, quantity, unit);
        if (topic != null && format != null && id != null) {
            once(map, id, topic, format);
        }
        if (id == null || vessel == null || quantity == null || topic == null || format == null) {
            return null;
        }
        return new ProbeBinding(new Probe(id, vessel.id(), quantity, device, every), topic, format, unit, mount);
    }

    private @Nullable Vessel vessel(YamlMap map) {
        String name = map.required("vessel", "the vessel that the probe stands in");
        if (name == null) {
            return null;
        }
        for (Vessel v : vessels) {
            if (v.id().equals(name)) {
                return v;
            }
        }
        List<String> known = vessels.stream().map(Vessel::id).toList();
        map.fault("vessel", "vessel " + YamlMap.quoted(name) + " is not known", KnownWords.advice(name, known));
        return null;
    }

    private static @Nullable String topic(YamlMap map) {
        String topic = map.required("topic", "the topic that its readings come on");
        if (topic == null) {
            return null;
        }
        boolean tooLong = topic.getBytes(StandardCharsets.UTF_8).length > 65_535;
        if (tooLong || topic.indexOf('+') >= 0 || topic.indexOf('#') >= 0 || topic.indexOf('\0') >= 0) {
            map.fault("topic", "topic " + YamlMap.quoted(topic) + " is no single topic", "a topic without + and #");
            return null;
        }
        return topic;
    }

    private static @Nullable String unit(YamlMap map, Quantity quantity, ProbeBinding.@Nullable PayloadFormat format) {
        String unit = map.text("unit");
        if (quantity == Quantity.STATE) {
            if (map.has("unit")) {
                map.fault("unit", "a state has no unit", "no unit");
            }
            return null;
        }
        if (unit != null && !ProbeUnits.allows(quantity, unit)) {
            map.fault(
                    "unit",
                    "unit " + YamlMap.quoted(unit) + " does not fit " + quantity.word(),
                    ProbeUnits.allowed(quantity));
        }
        boolean inPayload = format instanceof ProbeBinding.PayloadFormat.SenMl;
        if (map.has("unit") || inPayload || format == null) {
            return unit;
        }
        if (quantity == Quantity.PH) {
            return "pH";
        }
        map.missing("unit", "unit: " + ProbeUnits.allowed(quantity));
        return null;
    }

    private static double mount(YamlMap map, @Nullable Quantity quantity, @Nullable String unit) {
        double mount = map.measure("mount", Dimension.LENGTH, 1, 50_000);
        if (!map.has("mount")) {
            return Double.NaN;
        }
        if (quantity != null && quantity != Quantity.LEVEL) {
            map.fault("mount", "mount goes with quantity level only", "no mount");
        } else if (unit != null && Dimension.PRESSURE.allows(unit)) {
            map.fault("mount", "mount goes with a distance, not with a pressure", "no mount, or a unit of length");
        }
        return mount;
    }

    private void once(YamlMap map, String id, String topic, ProbeBinding.PayloadFormat format) {
        String other = fields.putIfAbsent(topic + "\0" + format, id);
        if (other != null) {
            map.fault(
                    "topic",
                    "topic and field are those of probe " + other,
                    "another topic, or another name or pointer in the payload");
        }
    }
}
