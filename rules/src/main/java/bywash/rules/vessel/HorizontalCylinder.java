package bywash.rules.vessel;

/**
 * A round vessel lying on its side with flat ends, such as a drum or a pipe: the area of the wetted circular segment
 * times the length, V = L [r^2 acos((r - h) / r) - (r - h) sqrt(2 r h - h^2)].
 *
 * @param diameterMm inside diameter, which is also its height (mm, above 0)
 * @param lengthMm inside length (mm, above 0)
 */
public record HorizontalCylinder(double diameterMm, double lengthMm) implements VesselShape {

    /** Refuses sizes that are not above zero. */
    public HorizontalCylinder {
        Checks.size("diameterMm", diameterMm);
        Checks.size("lengthMm", lengthMm);
    }

    @Override
    public Kind kind() {
        return Kind.HORIZONTAL_CYLINDER;
    }

    @Override
    public double heightMm() {
        return diameterMm;
    }

    @Override
    public double volumeL(double depthMm) {
        double h = Checks.within("depthMm", depthMm, diameterMm);
        double r = diameterMm / 2;
        double cosine = Math.max(-1, Math.min(1, (r - h) / r));
        double segment = r * r * StrictMath.acos(cosine) - (r - h) * halfChord(h);
        return Math.max(0, segment) * lengthMm * 1e-6;
    }

    @Override
    public double depthMm(double volumeL) {
        Checks.within("volumeL", volumeL, capacityL());
        return Checks.inverse(this::volumeL, volumeL, diameterMm);
    }

    @Override
    public double areaM2(double depthMm) {
        return 2 * halfChord(Checks.within("depthMm", depthMm, diameterMm)) * lengthMm * 1e-6;
    }

    @Override
    public double capacityL() {
        return volumeL(diameterMm);
    }

    private double halfChord(double h) {
        return StrictMath.sqrt(Math.max(0, h * (diameterMm - h)));
    }
}
