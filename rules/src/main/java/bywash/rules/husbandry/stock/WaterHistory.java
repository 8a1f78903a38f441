package bywash.rules.husbandry.stock;

import java.time.Instant;

/** The temperatures that growth was made at. */
@FunctionalInterface
public interface WaterHistory {
    /** Sum of daily mean temperatures of a vessel, Cel d; NaN where under half of the time is known. */
    double degreeDays(String vessel, Instant from, Instant to);
}
