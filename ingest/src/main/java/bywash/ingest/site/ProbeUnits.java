package bywash.ingest.site;

import bywash.rules.site.Quantity;
import org.jspecify.annotations.Nullable;

/** Which units a probe of a quantity may have. */
public final class ProbeUnits {
    private ProbeUnits() {}

    /** The dimension of a quantity; null for a state, which has none. */
    public static @Nullable Dimension dimension(Quantity quantity) {
        return switch (quantity) {
            case LEVEL -> Dimension.LENGTH;
            case TEMPERATURE -> Dimension.TEMPERATURE;
            case PH -> Dimension.PH;
            case DISSOLVED_OXYGEN -> Dimension.CONCENTRATION;
            case ORP -> Dimension.VOLTAGE;
            case CONDUCTIVITY -> Dimension.CONDUCTIVITY;
            case FLOW -> Dimension.FLOW;
            case STATE -> null;
        };
    }

    /** Whether a probe of the quantity may give the unit; a level may also come as a pressure. */
    public static boolean allows(Quantity quantity, String unit) {
        Dimension dimension = dimension(quantity);
        return (dimension != null && dimension.allows(unit))
                || (quantity == Quantity.LEVEL && Dimension.PRESSURE.allows(unit));
    }

    /** The units allowed, in words; empty for a state. */
    public static String allowed(Quantity quantity) {
        Dimension dimension = dimension(quantity);
        if (dimension == null) {
            return "";
        }
        return quantity == Quantity.LEVEL
                ? dimension.allowed() + ", or a pressure in " + Dimension.PRESSURE.allowed()
                : dimension.allowed();
    }
}
