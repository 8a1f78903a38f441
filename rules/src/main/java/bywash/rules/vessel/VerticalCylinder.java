package bywash.rules.vessel;

/**
 * An upright round vessel with a flat floor: V = pi D^2 h / 4.
 *
 * @param diameterMm inside diameter (mm, above 0)
 * @param heightMm inside height (mm, above 0)
 */
public record VerticalCylinder(double diameterMm, double heightMm) implements UprightWalls {

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
    public double floorAreaM2() {
        return Math.PI / 4 * diameterMm * diameterMm * 1e-6;
    }
}
