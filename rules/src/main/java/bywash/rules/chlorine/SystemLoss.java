package bywash.rules.chlorine;

import bywash.rules.water.LossRate;

/**
 * Loss of chlorine in the water of a running system. The low end, 0.03 per hour, is the bulk demand of clean drinking
 * water (US EPA Water Treatment Plant model, version 2, 2 mg/L, 20 Cel, organic carbon 1.5 mg/L); the high end, 2 per
 * hour, stands for water full of fish, feed and biofilm (from memory: literature 0.02 to 0.74 per hour in pipes; walls
 * and biofilm add to it). Chloramine reacts more slowly; its likely value is set lower, its low end is that of clean dark
 * water.
 */
final class SystemLoss {
    static final LossRate CHLORINE = new LossRate(0.03, 0.3, 2.0);
    static final LossRate CHLORAMINE = new LossRate(0.001, 0.1, 1.0);

    private SystemLoss() {}
}
