package bywash.ingest.site;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Reads the mains figures. What is not known is taken to be a usual chlorinated supply, never a harmless one: chlorine,
 * residual 1.0 mg/L, pH 7.5, alkalinity 100 mg/L, 12 Cel. With disinfectant none the residual is 0.
 */
final class MainsReader {
    private MainsReader() {}

    static @Nullable Mains read(Problems problems, YamlMap top) {
        Node node = top.node("mains");
        if (node == null) {
            return new Mains(Disinfectant.CHLORINE, 1.0, 7.5, 100, 12);
        }
        YamlMap map = YamlMap.at(
                problems,
                "mains: ",
                top.keyNode("mains"),
                node,
                "disinfectant",
                "residual",
                "ph",
                "alkalinity",
                "temperature");
        if (map == null) {
            return null;
        }
        Disinfectant word = map.word("disinfectant", Disinfectant.values(), Disinfectant::word);
        Disinfectant disinfectant = word == null ? Disinfectant.CHLORINE : word;
        double usual = disinfectant == Disinfectant.NONE ? 0 : 1.0;
        double residual = map.measureOr("residual", Dimension.CONCENTRATION, 0, 10, usual);
        if (disinfectant == Disinfectant.NONE && residual > 0) {
            map.fault("residual", "residual above 0 with disinfectant none", "chlorine or chloramine, or 0 mg/L");
        }
        return new Mains(
                disinfectant,
                residual,
                map.measureOr("ph", Dimension.PH, 4, 11, 7.5),
                map.measureOr("alkalinity", Dimension.CONCENTRATION, 0, 1000, 100),
                map.measureOr("temperature", Dimension.TEMPERATURE, 0, 40, 12));
    }
}
