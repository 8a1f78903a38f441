package bywash.ingest.site;

import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Band;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.site.SpeciesBand;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Reads the species that a site adds, each a few lines: {@code jade-perch: {like: nile-tilapia, temperature: {low: 16 Cel},
 * density: {high: 15 kg/m3}, source: "hatchery sheet"}}. What is left out is as in the species named by {@code like}.
 */
final class SpeciesReader {
    private static final String[] KEYS = Stream.concat(
                    Stream.of("like", "source"), Arrays.stream(Need.values()).map(Need::word))
            .toArray(String[]::new);

    private final Problems problems;
    private final List<Species> read = new ArrayList<>();

    private SpeciesReader(Problems problems) {
        this.problems = problems;
    }

    static List<Species> read(Problems problems, YamlMap top) {
        Node node = top.node("species");
        YamlMap byName = node == null ? null : YamlMap.at(problems, "species: ", top.keyNode("species"), node);
        if (byName == null) {
            return List.of();
        }
        SpeciesReader reader = new SpeciesReader(problems);
        for (String id : byName.names()) {
            Node key = byName.keyNode(id);
            Node value = byName.node(id);
            if (key != null && value != null && byName.idHolds(key, "species", id)) {
                reader.one(id, key, value);
            }
        }
        return reader.read;
    }

    private void one(String id, Node key, Node value) {
        YamlMap map = YamlMap.at(problems, "species " + id + ": ", key, value, KEYS);
        if (map == null) {
            return;
        }
        Map<Need, SpeciesBand> bands = new EnumMap<>(Need.class);
        if (map.has("like")) {
            Species like = like(map);
            if (like != null) {
                like.bands().forEach(b -> bands.put(b.need(), b));
            }
        } else if (!map.has(Need.TEMPERATURE.word())) {
            map.missing("like or temperature", "like: nile-tilapia, or temperature: {low: 16 Cel, high: 29 Cel}");
        }
        String source = map.text("source");
        for (Need need : Need.values()) {
            Node keyNode = map.keyNode(need.word());
            Node bandNode = map.node(need.word());
            Band band = keyNode == null || bandNode == null ? null : band(id, need, keyNode, bandNode);
            if (band != null) {
                bands.put(need, new SpeciesBand(need, band, source == null ? "site file" : source));
            }
        }
        read.add(new Species(id, List.copyOf(bands.values())));
    }

    private @Nullable Species like(YamlMap map) {
        String name = map.text("like");
        if (name == null) {
            return null;
        }
        List<Species> known =
                Stream.concat(read.stream(), SpeciesTable.builtIn().stream()).toList();
        List<String> words = known.stream().map(Species::id).distinct().toList();
        for (Species species : known) {
            if (species.id().equals(name)) {
                return species;
            }
        }
        map.fault("like", "species " + YamlMap.quoted(name) + " is not known", KnownWords.advice(name, words));
        return null;
    }

    private @Nullable Band band(String id, Need need, Node key, Node value) {
        YamlMap map = YamlMap.at(problems, "species " + id + ", " + need.word() + ": ", key, value, "low", "high");
        if (map == null) {
            return null;
        }
        if (!map.has("low") && !map.has("high")) {
            map.missing("low or high", "low, high or both");
            return null;
        }
        Dimension d = dimension(need);
        double lowest = d == Dimension.TEMPERATURE ? -5 : 0;
        double low = map.has("low") ? scale(need) * map.measure("low", d, lowest, 1e6) : Double.NEGATIVE_INFINITY;
        double high = map.has("high") ? scale(need) * map.measure("high", d, lowest, 1e6) : Double.POSITIVE_INFINITY;
        if (low >= high) {
            map.fault("high", "high is not above low", "low below high");
        }
        return low < high ? new Band(low, high) : null;
    }

    private static Dimension dimension(Need need) {
        return switch (need) {
            case TEMPERATURE, BEST_TEMPERATURE, FEEDING_TEMPERATURE -> Dimension.TEMPERATURE;
            case PH -> Dimension.PH;
            case OXYGEN, TOTAL_AMMONIA, UNIONISED_AMMONIA, NITRITE, NITRATE, CHLORINE, DENSITY ->
                Dimension.CONCENTRATION;
            case PROTEIN -> Dimension.FRACTION;
        };
    }

    /** From the dimension's fixed unit to the need's. */
    private static double scale(Need need) {
        return switch (need) {
            case CHLORINE -> 1000;
            case DENSITY -> 0.001;
            case PROTEIN -> 100;
            case TEMPERATURE,
                    BEST_TEMPERATURE,
                    FEEDING_TEMPERATURE,
                    PH,
                    OXYGEN,
                    TOTAL_AMMONIA,
                    UNIONISED_AMMONIA,
                    NITRITE,
                    NITRATE -> 1;
        };
    }
}
