package bywash.rules.husbandry.daily;

import bywash.rules.husbandry.stock.WaterHistory;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Keeps each water probe's days. */
public final class DailyWater implements WaterHistory {
    /** How many days are kept. */
    public static final int MOST_DAYS = ProbeDays.MOST_DAYS;

    private static final double LEAST_KNOWN_SHARE = 0.5;

    private final Site site;
    private final Map<String, ProbeDays> probes = new LinkedHashMap<>();

    public DailyWater(Site site) {
        this.site = site;
        for (Probe probe : site.probes()) {
            if (kept(probe.quantity())) {
                probes.put(probe.id(), new ProbeDays(site.timeZone()));
            }
        }
    }

    /** Whether days of it are kept. */
    public static boolean kept(Quantity quantity) {
        return switch (quantity) {
            case TEMPERATURE, PH, DISSOLVED_OXYGEN, ORP, CONDUCTIVITY -> true;
            case LEVEL, FLOW, STATE -> false;
        };
    }

    /** A believed reading of a probe, unit as its quantity's; one of a probe that is not kept is passed over. */
    public void reading(String probe, Instant at, double value) {
        ProbeDays days = probes.get(probe);
        if (days != null) {
            days.add(at, value);
        }
    }

    /** Readings of a day, or of a part of it, that are on record as a whole; added to what is there. */
    public void day(String probe, DayValue day) {
        ProbeDays days = probes.get(probe);
        if (days != null) {
            days.add(day);
        }
    }

    /** Days with a reading, oldest first. */
    public List<DayValue> days(String probe) {
        ProbeDays days = probes.get(probe);
        return days == null ? List.of() : days.all();
    }

    /** One day of the quantity in a vessel, or of the first probe in the loop where the vessel has none; null where not known. */
    public @Nullable DayValue on(String vessel, Quantity quantity, LocalDate day) {
        Probe probe = probe(vessel, quantity);
        ProbeDays days = probe == null ? null : probes.get(probe.id());
        return days == null ? null : days.on(day);
    }

    private @Nullable Probe probe(String vessel, Quantity quantity) {
        return site.probe(vessel, quantity)
                .or(() -> site.probes().stream()
                        .filter(p -> p.quantity() == quantity && inLoop(p))
                        .findFirst())
                .orElse(null);
    }

    private boolean inLoop(Probe probe) {
        return site.vessel(probe.vessel())
                .map(Vessel::role)
                .map(r -> r != VesselRole.RESERVE)
                .orElse(false);
    }

    @Override
    public double degreeDays(String vessel, Instant from, Instant to) {
        double known = 0;
        double sum = 0;
        double all = Duration.between(from, to).getSeconds() / 86_400.0;
        LocalDate last = to.atZone(site.timeZone()).toLocalDate();
        for (LocalDate day = from.atZone(site.timeZone()).toLocalDate(); !day.isAfter(last); day = day.plusDays(1)) {
            DayValue value = on(vessel, Quantity.TEMPERATURE, day);
            if (value != null) {
                double share = share(day, from, to);
                known += share;
                sum += share * value.mean();
            }
        }
        return all > 0 && known >= LEAST_KNOWN_SHARE * all ? sum / known * all : Double.NaN;
    }

    private double share(LocalDate day, Instant from, Instant to) {
        Instant start = day.atStartOfDay(site.timeZone()).toInstant();
        Instant end = day.plusDays(1).atStartOfDay(site.timeZone()).toInstant();
        Instant low = start.isBefore(from) ? from : start;
        Instant high = end.isAfter(to) ? to : end;
        return Math.max(0, Duration.between(low, high).getSeconds()) / 86_400.0;
    }
}
