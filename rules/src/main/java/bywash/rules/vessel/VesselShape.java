package bywash.rules.vessel;

/**
 * The inside shape of a vessel: what volume stands at a depth, and what depth a volume makes.
 *
 * <p>Volume rises without a break from 0 at depth 0 to {@link #capacityL()} at {@link #heightMm()}, so each volume has one
 * depth. One litre over one square metre is one millimetre, which is why {@link #areaM2} is also the slope of volume in
 * litres against depth in millimetres.
 */
public sealed interface VesselShape permits UprightWalls, HorizontalCylinder, ConeBottom, Frustum, StrappingTable {

    /** Which family this shape belongs to. */
    Kind kind();

    /** Depth of the vessel when full to the rim (mm, above 0). */
    double heightMm();

    /**
     * Volume of water at a depth.
     *
     * @param depthMm depth above the lowest point of the inside (mm, 0 to {@link #heightMm()})
     * @return volume (L)
     * @throws IllegalArgumentException if the depth is outside that range or not a number
     */
    double volumeL(double depthMm);

    /**
     * Depth of water that a volume makes, the inverse of {@link #volumeL}.
     *
     * @param volumeL volume (L, 0 to {@link #capacityL()})
     * @return depth above the lowest point of the inside (mm)
     * @throws IllegalArgumentException if the volume is outside that range or not a number
     */
    double depthMm(double volumeL);

    /**
     * Area of the free surface at a depth, which is the slope of volume against depth.
     *
     * @param depthMm depth above the lowest point of the inside (mm, 0 to {@link #heightMm()})
     * @return area (m2)
     * @throws IllegalArgumentException if the depth is outside that range or not a number
     */
    double areaM2(double depthMm);

    /** Volume when full to the rim (L). */
    double capacityL();
}
