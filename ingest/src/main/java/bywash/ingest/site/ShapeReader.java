package bywash.ingest.site;

import bywash.rules.vessel.Box;
import bywash.rules.vessel.ConeBottom;
import bywash.rules.vessel.Frustum;
import bywash.rules.vessel.HorizontalCylinder;
import bywash.rules.vessel.StrappingTable;
import bywash.rules.vessel.VerticalCylinder;
import bywash.rules.vessel.VesselShape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Reads a vessel's shape: its kind and the measures that the kind has. */
final class ShapeReader {
    /** Kinds with the keys that each must have. */
    private enum Kind {
        BOX("length", "width", "height"),
        VERTICAL_CYLINDER("diameter", "height"),
        HORIZONTAL_CYLINDER("diameter", "length"),
        CONE_BOTTOM("diameter", "cone-height", "height"),
        FRUSTUM("bottom-diameter", "top-diameter", "height"),
        STRAPPING_TABLE("table");

        private final List<String> keys;

        Kind(String... keys) {
            this.keys = List.of(keys);
        }

        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    private final Problems problems;
    private final String place;

    ShapeReader(Problems problems, String vessel) {
        this.problems = problems;
        this.place = "shape of " + vessel + ": ";
    }

    @Nullable
    VesselShape read(YamlMap vessel, Node node) {
        Node start = vessel.keyNode("shape");
        if (!(node instanceof MappingNode raw)) {
            problems.add(start == null ? node : start, place + "not a mapping", "shape: {kind: box, ...}");
            return null;
        }
        Kind kind = kind(raw, start == null ? node : start);
        if (kind == null) {
            return null;
        }
        List<String> allowed = new ArrayList<>(kind.keys);
        allowed.add(0, "kind");
        YamlMap map = new YamlMap(problems, place, node, raw, allowed);
        if (kind == Kind.STRAPPING_TABLE) {
            return table(map);
        }
        double[] mm = new double[3];
        boolean whole = true;
        for (int i = 0; i < kind.keys.size(); i++) {
            String key = kind.keys.get(i);
            if (!map.has(key)) {
                map.missing(key, key + ": with a length in " + Dimension.LENGTH.allowed());
            }
            mm[i] = map.measure(key, Dimension.LENGTH, 1, 50_000);
            whole &= !Double.isNaN(mm[i]);
        }
        try {
            return whole ? shape(kind, mm, map) : null;
        } catch (IllegalArgumentException e) {
            map.fault(node, String.valueOf(e.getMessage()), "measures that make a vessel");
            return null;
        }
    }

    private @Nullable Kind kind(MappingNode raw, Node start) {
        for (NodeTuple entry : raw.getValue()) {
            if (entry.getKeyNode() instanceof ScalarNode key && key.getValue().equals("kind")) {
                YamlMap one = new YamlMap(
                        problems,
                        place,
                        start,
                        new MappingNode(raw.getTag(), List.of(entry), raw.getFlowStyle()),
                        List.of());
                return one.word("kind", Kind.values(), Kind::word);
            }
        }
        problems.add(
                start,
                place + "kind is missing",
                KnownWords.list(Arrays.stream(Kind.values()).map(Kind::word).toList()));
        return null;
    }

    private static @Nullable VesselShape shape(Kind kind, double[] mm, YamlMap map) {
        if (kind == Kind.CONE_BOTTOM && mm[1] >= mm[2]) {
            map.fault(
                    "cone-height",
                    "cone-height is not below the height",
                    "cone-height below height, which includes it");
            return null;
        }
        return switch (kind) {
            case BOX -> new Box(mm[0], mm[1], mm[2]);
            case VERTICAL_CYLINDER -> new VerticalCylinder(mm[0], mm[1]);
            case HORIZONTAL_CYLINDER -> new HorizontalCylinder(mm[0], mm[1]);
            case CONE_BOTTOM -> new ConeBottom(mm[0], mm[1], mm[2]);
            case FRUSTUM -> new Frustum(mm[0], mm[1], mm[2]);
            case STRAPPING_TABLE -> throw new IllegalArgumentException("a table has no fixed measures");
        };
    }

    private @Nullable VesselShape table(YamlMap map) {
        String right = "table: [{depth: 0 mm, volume: 0 L}, {depth: 100 mm, volume: 52 L}]";
        if (!(map.node("table") instanceof SequenceNode list) || list.getValue().size() < 2) {
            map.fault("table", "table is not a list of two rows or more", right);
            return null;
        }
        List<StrappingTable.Row> rows = new ArrayList<>();
        double depth = -1;
        double volume = -1;
        for (Node row : list.getValue()) {
            YamlMap pair = YamlMap.at(problems, place, null, row, "depth", "volume");
            if (pair == null) {
                return null;
            }
            if (!pair.has("depth") || !pair.has("volume")) {
                pair.missing("depth or volume", right);
                return null;
            }
            double d = pair.measure("depth", Dimension.LENGTH, 0, 20_000);
            double v = pair.measure("volume", Dimension.VOLUME, 0, 1e7);
            if (Double.isNaN(d) || Double.isNaN(v)) {
                return null;
            }
            if (d <= depth || v <= volume || (rows.isEmpty() && (d != 0 || v != 0))) {
                pair.fault(row, "depths and volumes do not rise from zero row by row", right);
                return null;
            }
            rows.add(new StrappingTable.Row(d, v));
            depth = d;
            volume = v;
        }
        try {
            return new StrappingTable(rows);
        } catch (IllegalArgumentException e) {
            map.fault("table", String.valueOf(e.getMessage()), right);
            return null;
        }
    }
}
