package bywash.rules.vessel;

/**
 * An upright round vessel with a flat floor: V = pi D^2 h / 4.
 *
 * @param diameterMm inside diameter (mm, above 0)
 * @param heightMm inside height (mm, above 0)
 */
public record VerticalCylinder(double diameterMm, double heightMm) implements VesselShape {

    /** Refuses sizes that are not above zero. */
    public VerticalCylinder {
        Checks.size("diameterMm", diameterMm);
        Checks.size("heightMm", heightMm);
    }

    @Override
    public Kind kind() {
        return Kind.VERTICAL_CYLINDER;
    }

    @Override
    public double volumeL(double depthMm) {
        return base() * Checks.within("depthMm", depthMm, heightMm);
    }

    @Override
    public double depthMm(double volumeL) {
        return Math.min(heightMm, Checks.within("volumeL", volumeL, capacityL()) / base());
    }

    @Override
    public double areaM2(double depthMm) {
        Checks.within("depthMm", depthMm, heightMm);
        return base();
    }

    @Override
    public double capacityL() {
        return base() * heightMm;
    }

    private double base() {
        return Math.PI / 4 * diameterMm * diameterMm * 1e-6;
    }
}
