package bywash.tui.view;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.site.Device;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.util.List;
import java.util.function.Predicate;

/** What each alarm can be about at a site: a vessel, a probe, the whole system or the feed, by its id. */
final class AlarmSubjects {
    private static final String SYSTEM = "system";
    private static final String FEED = "feed";

    private AlarmSubjects() {}

    /** In the order of the site file; empty where the site has none of it. */
    static List<String> of(Site site, AlarmKind kind) {
        return switch (kind) {
            case UNPLANNED_INFLOW, UNPLANNED_LOSS, OVERFLOW_NEAR, LINE_NOT_SHUT -> read(site, Quantity.LEVEL);
            case UNSAFE_RELEASE ->
                site.vessels(VesselRole.RESERVE).stream().map(Vessel::id).toList();
            case CHLORINE_RISK, ORP_RISE, BIOFILTER_SETBACK -> List.of(SYSTEM);
            case LOW_OXYGEN -> read(site, Quantity.DISSOLVED_OXYGEN);
            case PH_LOW, PH_HIGH -> read(site, Quantity.PH);
            case TEMPERATURE_LOW, TEMPERATURE_HIGH, TEMPERATURE_SWING -> read(site, Quantity.TEMPERATURE);
            case ORP_LOW -> read(site, Quantity.ORP);
            case AMMONIA_TOXIC, NITRITE_HIGH -> vessels(site);
            case PUMP_STOPPED -> pumps(site);
            case FEED_LOST -> List.of(FEED);
            case PROBE_SILENT, PROBE_STUCK, PROBE_IMPLAUSIBLE -> probes(site);
        };
    }

    static List<String> vessels(Site site) {
        return site.vessels().stream().map(Vessel::id).toList();
    }

    static List<String> probes(Site site) {
        return site.probes().stream().map(Probe::id).toList();
    }

    /** Where no pump tells its state, its stop is seen in the levels. */
    private static List<String> pumps(Site site) {
        List<String> told = vessels(site, p -> p.quantity() == Quantity.STATE && p.device() == Device.PUMP);
        return told.isEmpty() ? read(site, Quantity.LEVEL) : told;
    }

    private static List<String> read(Site site, Quantity quantity) {
        return vessels(site, p -> p.quantity() == quantity);
    }

    private static List<String> vessels(Site site, Predicate<Probe> with) {
        return site.probes().stream().filter(with).map(Probe::vessel).distinct().toList();
    }
}
