package bywash.tui.account;

import java.time.Instant;

/** The estimated residual of the system at one moment, ug/L as Cl2, with its range. */
public record ResidualPoint(Instant at, double lowUgL, double likelyUgL, double highUgL) {}
