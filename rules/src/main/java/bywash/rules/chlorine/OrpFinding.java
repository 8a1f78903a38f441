package bywash.rules.chlorine;

import java.time.Instant;

/**
 * The oxidation potential rises although no inflow is seen: a probe out of the water, an oxidant dosed, or water that the
 * balance cannot see.
 *
 * @param riseMv over its usual value, mV
 * @param sigmas the same in its usual spread
 * @param jumped whether it came faster than the water mixes
 */
public record OrpFinding(Instant since, double riseMv, double sigmas, boolean jumped, String why) {}
