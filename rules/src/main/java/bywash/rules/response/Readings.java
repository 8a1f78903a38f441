package bywash.rules.response;

import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding;
import bywash.rules.site.Band;
import bywash.rules.site.Quantity;
import bywash.rules.site.SystemVolume;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known at a moment, for a sheet to be written from.
 *
 * @param findings by the balance, system vessels and reserves
 */
public record Readings(
        Instant at,
        ResidualEstimate residual,
        SystemVolume volume,
        List<FlowFinding> findings,
        List<BatchView> batches,
        List<ProbeNow> probes) {
    public Readings {
        findings = List.copyOf(findings);
        batches = List.copyOf(batches);
        probes = List.copyOf(probes);
    }

    /**
     * One probe.
     *
     * @param good whether the reading can be believed
     * @param band the good band; null where none applies
     */
    public record ProbeNow(
            String id,
            String vessel,
            Quantity quantity,
            double value,
            boolean good,
            @Nullable Band band) {}

    /** The first believed probe of a quantity; null where there is none. */
    @Nullable
    ProbeNow probe(Quantity quantity) {
        return probes.stream()
                .filter(p -> p.quantity() == quantity && p.good())
                .findFirst()
                .orElse(null);
    }
}
