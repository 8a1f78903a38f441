package bywash.rules.chlorine;

import bywash.rules.water.LossRate;

/**
 * Loss of chlorine in the water of a running system. 0.02 to 0.74 per hour is the bulk decay of 200 bottle tests of treated waters
 * (Powell et al. 2000, Urban Water; from memory), and 0.03 that of clean drinking water (US EPA Water Treatment Plant model,
 * version 2, 2 mg/L, 20 Cel, organic carbon 1.5 mg/L); walls, fish, feed and biofilm add to it, for which no rate is published: the
 * high end is set at 2 per hour, the likely value midway in the logarithm. Chloramine reacts more slowly; its likely value is set
 * lower, its low end is that of clean dark water.
 */
final class SystemLoss {
    static final LossRate CHLORINE = new LossRate(0.02, 0.2, 2.0);
    static final LossRate CHLORAMINE = new LossRate(0.001, 0.1, 1.0);

    private SystemLoss() {}
}
