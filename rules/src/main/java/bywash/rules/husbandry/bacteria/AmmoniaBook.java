package bywash.rules.husbandry.bacteria;

import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.water.LabelStrength;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Nitrogen dosed as ammonia, by local day. A dose is the product as weighed, of the strength on its label. */
public final class AmmoniaBook {
    private static final int MOST_DAYS = 800;

    private final ZoneId zone;
    private final TreeMap<LocalDate, Double> days = new TreeMap<>();

    public AmmoniaBook(ZoneId zone) {
        this.zone = zone;
    }

    /** Books a dose of ammonia; every other reagent is passed over. */
    public void book(Dose dose) {
        Stream.of(AmmoniaSource.values())
                .filter(s -> s != AmmoniaSource.PELLETS && s.word().equals(dose.reagent()))
                .findFirst()
                .ifPresent(s -> days.merge(
                        dose.at().atZone(zone).toLocalDate(),
                        dose.massG()
                                * s.nitrogenShare()
                                * LabelStrength.percent(dose.reagent(), dose.strengthPercent())
                                / 100,
                        Double::sum));
        if (days.size() > MOST_DAYS) {
            days.pollFirstEntry();
        }
    }

    /** Nitrogen a day, mean of the last whole days before today, g; 0 where none was dosed in them. */
    public double recentGPerDay(Instant now, int count) {
        LocalDate today = now.atZone(zone).toLocalDate();
        if (days.isEmpty()) {
            return 0;
        }
        long known = Math.max(1, Math.min(count, ChronoUnit.DAYS.between(days.firstKey(), today)));
        return days.subMap(today.minusDays(known), true, today, false).values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum()
                / known;
    }
}
