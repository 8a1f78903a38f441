package bywash.ingest.payload;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.ProbeUnits;
import bywash.rules.site.Quantity;
import bywash.rules.site.Vessel;
import org.jspecify.annotations.Nullable;

/**
 * From the payload's number to the fixed unit of the probe's quantity. A level may come as a depth, as a distance down from
 * the mount, or as the pressure of the water above the sensor: depth = p / (density * g), 998 kg/m3 and 9.80665 m/s2.
 */
final class Conversion {
    /** Depth that 1 kPa stands for, mm. */
    private static final double MM_PER_KPA = 1e6 / (998 * 9.80665);

    private final Quantity quantity;
    private final @Nullable Dimension dimension;
    private final @Nullable String unit;
    private final double mountMm;
    private final @Nullable Vessel vessel;

    /** @param vessel that the probe is in; null where the site has none of that name */
    Conversion(ProbeBinding binding, @Nullable Vessel vessel) {
        this.quantity = binding.probe().quantity();
        this.dimension = ProbeUnits.dimension(quantity);
        this.unit = binding.unit();
        this.mountMm = binding.mountMm();
        this.vessel = quantity == Quantity.LEVEL ? vessel : null;
    }

    /** @param given the unit that the payload carries; null where it carries none */
    double toFixed(double value, @Nullable String given) throws PayloadFault {
        double fixed = plain(value, given == null ? unit : given);
        if (quantity.possible(fixed)) {
            String impossible = vessel == null ? "" : vessel.impossible(fixed);
            if (!impossible.isEmpty()) {
                throw new PayloadFault(impossible);
            }
            return fixed;
        }
        if (quantity == Quantity.STATE) {
            throw new PayloadFault(value + " is not a state such as 1 or 0");
        }
        throw new PayloadFault(quantity.word() + " " + shown(fixed) + " cannot be true: outside "
                + shown(quantity.lowest()) + " to " + shown(quantity.highest()) + " " + quantity.unit());
    }

    private double plain(double value, @Nullable String symbol) throws PayloadFault {
        if (dimension == null) {
            return StateWord.of(value);
        }
        if (symbol == null) {
            if (quantity == Quantity.PH) {
                return value;
            }
            throw new PayloadFault("the record carries no unit");
        }
        if (quantity == Quantity.LEVEL && Dimension.PRESSURE.allows(symbol)) {
            return Dimension.PRESSURE.toFixed(value, symbol) * MM_PER_KPA;
        }
        if (!dimension.allows(symbol)) {
            throw new PayloadFault("unit " + PayloadFault.quoted(symbol) + " does not fit " + quantity.word());
        }
        double fixed = dimension.toFixed(value, symbol);
        return Double.isNaN(mountMm) ? fixed : mountMm - fixed;
    }

    private static String shown(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e9) {
            return Long.toString((long) value);
        }
        return Double.toString(Math.abs(value) < 1e6 ? Math.round(value * 1000) / 1000.0 : value);
    }
}
