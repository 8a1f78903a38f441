package bywash.rules.vessel;

/** A vessel of one area from floor to rim: volume is that area times depth. */
sealed interface UprightWalls extends VesselShape permits Box, VerticalCylinder {

    /** Area of the floor, and of every surface above it (m2). */
    double floorAreaM2();

    @Override
    default double volumeL(double depthMm) {
        return floorAreaM2() * Checks.within("depthMm", depthMm, heightMm());
    }

    @Override
    default double depthMm(double volumeL) {
        return Math.min(heightMm(), Checks.within("volumeL", volumeL, capacityL()) / floorAreaM2());
    }

    @Override
    default double areaM2(double depthMm) {
        Checks.within("depthMm", depthMm, heightMm());
        return floorAreaM2();
    }

    @Override
    default double capacityL() {
        return floorAreaM2() * heightMm();
    }
}
