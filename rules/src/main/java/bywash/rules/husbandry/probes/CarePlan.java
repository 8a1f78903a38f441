package bywash.rules.husbandry.probes;

import bywash.rules.site.Quantity;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * How often a kind of probe is to be calibrated and how far it may be off.
 *
 * <p>Error: R. J. Wagner and others, 2006, USGS Techniques and Methods 1-D3, calibration criteria (0.2 pH, 0.3 mg/L, 0.2 Cel, 3 % of
 * conductivity), from memory: to be confirmed against the source. Oxidation potential 20 mV, level 5 mm, and all intervals are common
 * practice, no source: the maker's sheet decides.
 *
 * @param every between calibrations
 * @param error that a calibration may find before the readings since the last are doubted; conductivity in uS/cm at 600
 */
public record CarePlan(Duration every, double error) {
    /** The plan of a quantity; null where nothing is to be calibrated. */
    public static @Nullable CarePlan of(Quantity quantity) {
        return switch (quantity) {
            case PH -> new CarePlan(Duration.ofDays(30), 0.2);
            case DISSOLVED_OXYGEN -> new CarePlan(Duration.ofDays(30), 0.3);
            case ORP -> new CarePlan(Duration.ofDays(90), 20);
            case CONDUCTIVITY -> new CarePlan(Duration.ofDays(90), 18);
            case TEMPERATURE -> new CarePlan(Duration.ofDays(365), 0.2);
            case LEVEL -> new CarePlan(Duration.ofDays(90), 5);
            case FLOW, STATE -> null;
        };
    }
}
