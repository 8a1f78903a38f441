package bywash.rules.vessel;

/**
 * A round vessel with sloping walls, such as a bucket or a stock tank: V = (pi h / 3) (r0^2 + r0 r + r^2) where r is the
 * radius at the water surface.
 *
 * @param bottomDiameterMm inside diameter at the floor (mm, above 0)
 * @param topDiameterMm inside diameter at the rim (mm, above 0)
 * @param heightMm inside height (mm, above 0)
 */
public record Frustum(double bottomDiameterMm, double topDiameterMm, double heightMm) implements VesselShape {

    /** Refuses sizes that are not above zero. */
    public Frustum {
        Checks.size("bottomDiameterMm", bottomDiameterMm);
        Checks.size("topDiameterMm", topDiameterMm);
        Checks.size("heightMm", heightMm);
    }

    @Override
    public Kind kind() {
        return Kind.FRUSTUM;
    }

    @Override
    public double volumeL(double depthMm) {
        double h = Checks.within("depthMm", depthMm, heightMm);
        double r0 = bottomDiameterMm / 2;
        double r = radius(h);
        return Math.PI / 3 * h * (r0 * r0 + r0 * r + r * r) * 1e-6;
    }

    @Override
    public double depthMm(double volumeL) {
        Checks.within("volumeL", volumeL, capacityL());
        return Checks.inverse(this::volumeL, volumeL, heightMm);
    }

    @Override
    public double areaM2(double depthMm) {
        double r = radius(Checks.within("depthMm", depthMm, heightMm));
        return Math.PI * r * r * 1e-6;
    }

    @Override
    public double capacityL() {
        return volumeL(heightMm);
    }

    private double radius(double h) {
        return (bottomDiameterMm + (topDiameterMm - bottomDiameterMm) * h / heightMm) / 2;
    }
}
