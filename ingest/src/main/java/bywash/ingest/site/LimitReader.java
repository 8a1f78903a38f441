package bywash.ingest.site;

import bywash.rules.site.Band;
import bywash.rules.site.Limit;
import bywash.rules.site.Quantity;
import bywash.rules.site.Vessel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads the bands that a site sets for itself. */
final class LimitReader {
    private static final Quantity[] BANDED =
            Arrays.stream(Quantity.values()).filter(q -> q != Quantity.STATE).toArray(Quantity[]::new);

    private LimitReader() {}

    static List<Limit> read(Problems problems, YamlMap top, List<Vessel> vessels) {
        List<Limit> limits = new ArrayList<>();
        Node node = top.node("limits");
        YamlMap byVessel = node == null ? null : YamlMap.at(problems, "limits: ", top.keyNode("limits"), node);
        if (byVessel == null) {
            return limits;
        }
        List<String> ids = vessels.stream().map(Vessel::id).toList();
        for (String vessel : byVessel.names()) {
            Node key = byVessel.keyNode(vessel);
            Node value = byVessel.node(vessel);
            if (key == null || value == null) {
                continue;
            }
            if (!ids.contains(vessel)) {
                byVessel.fault(
                        key, "vessel " + YamlMap.quoted(vessel) + " is not known", KnownWords.advice(vessel, ids));
            }
            YamlMap bands = YamlMap.at(problems, "limits of " + vessel + ": ", key, value);
            if (bands != null) {
                bands(problems, vessel, bands, limits);
            }
        }
        return limits;
    }

    private static void bands(Problems problems, String vessel, YamlMap bands, List<Limit> limits) {
        for (String name : bands.names()) {
            Node key = bands.keyNode(name);
            Node value = bands.node(name);
            if (key == null || value == null) {
                continue;
            }
            Quantity quantity = bands.word(key, "quantity", name, BANDED, Quantity::word);
            YamlMap map = YamlMap.at(problems, "limits of " + vessel + ", " + name + ": ", key, value, "low", "high");
            Band band = quantity == null || map == null ? null : band(map, quantity);
            if (quantity != null && band != null) {
                limits.add(new Limit(vessel, quantity, band));
            }
        }
    }

    private static @Nullable Band band(YamlMap map, Quantity quantity) {
        Dimension dimension = ProbeUnits.dimension(quantity);
        if (dimension == null) {
            return null;
        }
        if (!map.has("low") && !map.has("high")) {
            map.missing("low or high", "low, high or both");
            return null;
        }
        double low = map.measureOr("low", dimension, quantity.lowest(), quantity.highest(), Double.NEGATIVE_INFINITY);
        double high = map.measureOr("high", dimension, quantity.lowest(), quantity.highest(), Double.POSITIVE_INFINITY);
        if (low >= high) {
            map.fault("high", "high is not above low", "low below high");
        }
        return low < high ? new Band(low, high) : null;
    }
}
