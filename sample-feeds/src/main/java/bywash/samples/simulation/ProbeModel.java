package bywash.samples.simulation;

/**
 * The level probes of a site.
 *
 * @param noiseMm of a sample, one standard deviation
 * @param everyS seconds between samples
 * @param quantumMm step of the reading; 0.1 for a probe that sends hundredths of a centimetre
 * @param driftMmPerDay of the sump's probe
 * @param mishaps share of samples that are spikes; as many again are lost, and as many again sent twice
 */
public record ProbeModel(double noiseMm, int everyS, double quantumMm, double driftMmPerDay, double mishaps) {}
