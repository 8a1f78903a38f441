package bywash.ingest.site;

import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.VesselShape;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads the vessels: role, shape or volume, overflow, and what a reserve feeds. */
final class VesselReader {
    private final Problems problems;
    private final Set<String> shaped = new HashSet<>();

    VesselReader(Problems problems) {
        this.problems = problems;
    }

    /** Vessels in the order of the file; faulty ones too, with what could be read, so that probes find them by name. */
    List<Vessel> read(YamlMap top) {
        List<Vessel> vessels = new ArrayList<>();
        Node node = top.node("vessels");
        if (node == null) {
            top.missing("vessels", "at least one vessel");
            return vessels;
        }
        YamlMap map = YamlMap.at(problems, "vessels: ", top.keyNode("vessels"), node);
        if (map == null) {
            return vessels;
        }
        List<String> ids = new ArrayList<>();
        map.names().forEach(ids::add);
        if (ids.isEmpty()) {
            map.fault(node, "there is no vessel", "at least one vessel");
        }
        for (String id : ids) {
            Node key = map.keyNode(id);
            Node value = map.node(id);
            if (key != null && value != null) {
                idHolds(map, key, id);
                vessels.add(vessel(key, value, id));
            }
        }
        checkFeeds(map, vessels);
        return vessels;
    }

    /** Whether a shape stands at the vessel, be it one that could not be read. */
    boolean shaped(String vessel) {
        return shaped.contains(vessel);
    }

    private static void idHolds(YamlMap map, Node key, String id) {
        if (map.idHolds(key, "vessel", id) && id.equals("mains")) {
            map.fault(key, "a vessel cannot be called mains", "another name; mains is the supply");
        }
    }

    private Vessel vessel(Node key, Node value, String id) {
        Vessel nothing = new Vessel(id, VesselRole.SUMP, null, Double.NaN, Double.NaN, null);
        YamlMap map = YamlMap.at(
                problems,
                "vessel " + id + ": ",
                key,
                value,
                "role",
                "shape",
                "volume",
                "overflow",
                "feeds",
                "media-porosity");
        if (map == null) {
            return nothing;
        }
        VesselRole role = map.word("role", VesselRole.values(), VesselRole::word);
        if (!map.has("role")) {
            map.missing("role", "role: fish-tank, sump, grow-bed or reserve");
        }
        Node shapeNode = map.node("shape");
        if (shapeNode != null) {
            shaped.add(id);
        }
        VesselShape shape = shapeNode == null ? null : new ShapeReader(problems, id).read(map, shapeNode);
        double overflow = overflow(map, shape);
        double volume = volume(map, shape, overflow);
        String feeds = map.text("feeds");
        if (feeds != null && role != null && role != VesselRole.RESERVE) {
            map.fault("feeds", "feeds stands at a vessel that is no reserve", "feeds only where role is reserve");
        }
        VesselRole known = role == null ? VesselRole.SUMP : role;
        return new Vessel(id, known, shape, volume, overflow, feeds, porosity(map, role, known));
    }

    private static double porosity(YamlMap map, @Nullable VesselRole role, VesselRole known) {
        double usual = known == VesselRole.GROW_BED ? Vessel.USUAL_POROSITY : 1;
        double porosity = map.measureOr("media-porosity", Dimension.FRACTION, 0.05, 1, usual);
        if (map.has("media-porosity") && role != null && role != VesselRole.GROW_BED) {
            map.fault(
                    "media-porosity",
                    "media-porosity stands at a vessel that is no grow-bed",
                    "media-porosity only where role is grow-bed");
        }
        return porosity;
    }

    private static double overflow(YamlMap map, @Nullable VesselShape shape) {
        double overflow = map.measure("overflow", Dimension.LENGTH, 1, 20_000);
        if (map.has("overflow") && !map.has("shape")) {
            map.fault("overflow", "overflow without a shape", "a shape, or no overflow");
        }
        if (shape == null) {
            return Double.NaN;
        }
        if (overflow > shape.heightMm() * (1 + 1e-9)) {
            map.fault(
                    "overflow",
                    "overflow " + Measure.format(overflow, "mm") + " is above the height of the vessel",
                    "at most " + Measure.format(shape.heightMm(), "mm"));
        }
        return map.has("overflow") ? Math.min(overflow, shape.heightMm()) : shape.heightMm();
    }

    private static double volume(YamlMap map, @Nullable VesselShape shape, double overflow) {
        double volume = map.measure("volume", Dimension.VOLUME, 0.1, 1e7);
        if (!map.has("shape") && !map.has("volume")) {
            map.missing("shape or volume", "a shape, or volume: such as 180 L");
        }
        if (map.has("shape") && map.has("volume")) {
            map.fault("volume", "volume beside a shape", "one of them; the shape gives the volume");
        }
        return shape == null || Double.isNaN(overflow) ? volume : shape.volumeL(overflow);
    }

    private static void checkFeeds(YamlMap map, List<Vessel> vessels) {
        List<String> targets = vessels.stream()
                .filter(v -> v.role() != VesselRole.RESERVE)
                .map(Vessel::id)
                .toList();
        for (Vessel v : vessels) {
            String feeds = v.feeds();
            Node key = map.keyNode(v.id());
            if (feeds != null && key != null && !targets.contains(feeds)) {
                map.fault(
                        key,
                        v.id() + " feeds " + YamlMap.quoted(feeds) + ", which is no vessel of the system",
                        targets.isEmpty() ? "a vessel that is no reserve" : KnownWords.list(targets));
            }
        }
    }
}
