package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What a manual test may measure, and how its value is written. */
final class TestQuantity {
    private static final Map<String, Dimension> WORDS = new TreeMap<>(Map.ofEntries(
            Map.entry("total-chlorine", Dimension.CONCENTRATION),
            Map.entry("free-chlorine", Dimension.CONCENTRATION),
            Map.entry("total-ammonia", Dimension.CONCENTRATION),
            Map.entry("nitrite", Dimension.CONCENTRATION),
            Map.entry("nitrate", Dimension.CONCENTRATION),
            Map.entry("alkalinity", Dimension.CONCENTRATION),
            Map.entry("dissolved-oxygen", Dimension.CONCENTRATION),
            Map.entry("ph", Dimension.PH),
            Map.entry("temperature", Dimension.TEMPERATURE),
            Map.entry("orp", Dimension.VOLTAGE),
            Map.entry("conductivity", Dimension.CONDUCTIVITY),
            Map.entry("flow", Dimension.FLOW),
            Map.entry("level", Dimension.LENGTH)));

    private TestQuantity() {}

    static @Nullable Dimension dimension(String word) {
        return WORDS.get(word);
    }

    static String words() {
        return String.join(", ", WORDS.keySet());
    }
}
