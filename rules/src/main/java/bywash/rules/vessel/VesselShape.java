package bywash.rules.vessel;

/** placeholder until the shapes land. */
public interface VesselShape {
    double heightMm();
    double volumeL(double depthMm);
    double depthMm(double volumeL);
    double areaM2(double depthMm);
    double capacityL();
}
