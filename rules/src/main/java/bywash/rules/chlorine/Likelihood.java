package bywash.rules.chlorine;

/** How probable a reading is if so much chlorine is there, a probe answers so, and such water came in; never below zero. */
interface Likelihood {
    double of(double ugL, ProbeAnswer answer, Water water);
}
