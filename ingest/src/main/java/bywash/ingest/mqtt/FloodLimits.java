package bywash.ingest.mqtt;

import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * How much a watch takes of each topic and in all, worked out of what the site file declares. A message of up to 512 bytes is
 * one, a longer one as many as it has such parts.
 *
 * @param declaredPerSecond messages a second on each topic, as its probes' {@code every} says
 * @param bytesADay of all topics together, beyond twice what is declared
 */
public record FloodLimits(Map<String, Double> declaredPerSecond, long bytesADay) {
    /** Bytes of one part of a message. */
    static final int PART = 512;

    private static final double TIMES_DECLARED = 10;
    private static final double LEAST_AT_ONCE = 1000;
    private static final double DAY_S = 86_400;
    private static final double LEAST_BYTES_A_DAY = 20e6;

    public FloodLimits {
        declaredPerSecond = Map.copyOf(declaredPerSecond);
    }

    public static FloodLimits of(SiteFile file) {
        Map<String, Double> declared = new TreeMap<>();
        for (ProbeBinding binding : file.bindings()) {
            declared.merge(binding.topic(), 1.0 / binding.probe().every().toSeconds(), Double::sum);
        }
        double all = declared.values().stream().mapToDouble(Double::doubleValue).sum();
        return new FloodLimits(declared, (long) Math.max(LEAST_BYTES_A_DAY, TIMES_DECLARED * all * DAY_S * 100));
    }

    /** In the long run: ten times what is declared, one a second at least. */
    double perSecond(String topic) {
        return Math.max(1, TIMES_DECLARED * declared(topic));
    }

    /** At once: what is declared for a day, a thousand at least. */
    double atOnce(String topic) {
        return Math.max(LEAST_AT_ONCE, declared(topic) * DAY_S);
    }

    double declared(String topic) {
        return declaredPerSecond.getOrDefault(topic, 0.0);
    }

    /** For the grower. */
    public String words() {
        return String.format(
                Locale.ROOT,
                "taken of each topic: %.0f times what it declares, of all %.0f MB a day; more is dropped and said",
                TIMES_DECLARED,
                bytesADay / 1e6);
    }
}
