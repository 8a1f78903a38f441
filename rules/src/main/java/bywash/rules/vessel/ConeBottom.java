package bywash.rules.vessel;

/**
 * An upright round vessel whose floor is a cone pointing down: V = (pi / 3) (r h / H)^2 h in the cone, and the full cone plus
 * a cylinder above it.
 *
 * @param diameterMm inside diameter of the cylinder (mm, above 0)
 * @param coneHeightMm height of the cone (mm, above 0)
 * @param heightMm height from the tip of the cone to the rim (mm, not less than the cone)
 */
public record ConeBottom(double diameterMm, double coneHeightMm, double heightMm) implements VesselShape {

    /** Refuses sizes that are not above zero, and a vessel lower than its own cone. */
    public ConeBottom {
        Checks.size("diameterMm", diameterMm);
        Checks.size("coneHeightMm", coneHeightMm);
        Checks.size("heightMm", heightMm);
        if (heightMm < coneHeightMm) {
            throw new IllegalArgumentException(
                    "heightMm is " + heightMm + "; it must not be less than coneHeightMm " + coneHeightMm);
        }
    }

    @Override
    public Kind kind() {
        return Kind.CONE_BOTTOM;
    }

    @Override
    public double volumeL(double depthMm) {
        double h = Checks.within("depthMm", depthMm, heightMm);
        if (h <= coneHeightMm) {
            return areaM2(h) * h / 3;
        }
        return full() * coneHeightMm / 3 + full() * (h - coneHeightMm);
    }

    @Override
    public double depthMm(double volumeL) {
        Checks.within("volumeL", volumeL, capacityL());
        double coneL = full() * coneHeightMm / 3;
        if (volumeL <= coneL) {
            return Math.min(coneHeightMm, coneHeightMm * StrictMath.cbrt(volumeL / coneL));
        }
        return Math.min(heightMm, coneHeightMm + (volumeL - coneL) / full());
    }

    @Override
    public double areaM2(double depthMm) {
        double share = Math.min(1, Checks.within("depthMm", depthMm, heightMm) / coneHeightMm);
        return full() * share * share;
    }

    @Override
    public double capacityL() {
        return volumeL(heightMm);
    }

    private double full() {
        return Math.PI / 4 * diameterMm * diameterMm * 1e-6;
    }
}
