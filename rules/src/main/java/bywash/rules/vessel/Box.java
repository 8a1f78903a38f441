package bywash.rules.vessel;

/**
 * A rectangular vessel with upright walls: V = length x width x depth.
 *
 * @param lengthMm inside length (mm, above 0)
 * @param widthMm inside width (mm, above 0)
 * @param heightMm inside height (mm, above 0)
 */
public record Box(double lengthMm, double widthMm, double heightMm) implements UprightWalls {

    /** Refuses sizes that are not above zero. */
    public Box {
        Checks.size("lengthMm", lengthMm);
        Checks.size("widthMm", widthMm);
        Checks.size("heightMm", heightMm);
    }

    @Override
    public Kind kind() {
        return Kind.BOX;
    }

    @Override
    public double floorAreaM2() {
        return lengthMm * widthMm * 1e-6;
    }
}
