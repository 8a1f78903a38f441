package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.PresentWater.Seen;
import bywash.rules.husbandry.daily.DailyWater;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.daily.PastMinutes;
import bywash.rules.husbandry.probes.ProbeBook;
import bywash.rules.husbandry.season.EntryBook.Shown;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.VesselRole;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The latest of the fish tank's probes, or of the first in the loop where the tank has none. */
final class Latest {
    private final Site site;
    private final DailyWater water;
    private final Map<String, Seen> seen = new HashMap<>();

    Latest(Site site, DailyWater water) {
        this.site = site;
        this.water = water;
    }

    void reading(String probe, Instant at, double value) {
        seen.put(probe, new Seen(value, at, ""));
    }

    /** What the probes of a test's water and quantity showed then, each within its own {@link ProbeBook#sameWater}. */
    List<Shown> shown(WaterTest test, PastMinutes past) {
        return site.probes().stream()
                .filter(p ->
                        p.vessel().equals(test.vessel()) && p.quantity().word().equals(test.quantity()))
                .flatMap(p -> past
                        .before(p.id(), test.at(), ProbeBook.sameWater(p))
                        .map(m -> new Shown(p.id(), m.start(), m.mean()))
                        .stream())
                .toList();
    }

    /** Mean temperature of the day up to a time (Cel), of the day before where it has none; NaN where neither has. */
    double temperatureC(Instant at, PastMinutes past) {
        Probe probe = probe(Quantity.TEMPERATURE).orElse(null);
        if (probe == null) {
            return Double.NaN;
        }
        LocalDate day = at.atZone(site.timeZone()).toLocalDate();
        double today = past.mean(probe.id(), day.atStartOfDay(site.timeZone()).toInstant(), at);
        if (!Double.isNaN(today)) {
            return today;
        }
        DayValue before = water.on(probe.vessel(), Quantity.TEMPERATURE, day.minusDays(1));
        return before == null ? Double.NaN : before.mean();
    }

    private Optional<Probe> probe(Quantity quantity) {
        return site.probes().stream()
                .filter(p -> p.quantity() == quantity && in(p, VesselRole.FISH_TANK))
                .findFirst()
                .or(() -> site.probes().stream()
                        .filter(p -> p.quantity() == quantity && !in(p, VesselRole.RESERVE))
                        .findFirst());
    }

    private boolean in(Probe probe, VesselRole role) {
        return site.vessel(probe.vessel()).map(v -> v.role() == role).orElse(false);
    }

    /** Latest reading of a quantity by its word, with the doubts that the book has of its probe. */
    @Nullable
    Seen seen(String quantity, ProbeBook book, Instant now) {
        for (Quantity q : Quantity.values()) {
            if (q.word().equals(quantity)) {
                return probe(q).map(p -> {
                            Seen s = seen.get(p.id());
                            return s == null ? null : new Seen(s.value(), s.at(), book.suspect(p.id(), now));
                        })
                        .orElse(null);
            }
        }
        return null;
    }

    /** Today, or yesterday where today has nothing; null where neither has. */
    @Nullable
    DayValue day(Quantity quantity, Instant now) {
        Probe probe = probe(quantity).orElse(null);
        if (probe == null) {
            return null;
        }
        LocalDate today = now.atZone(site.timeZone()).toLocalDate();
        DayValue day = water.on(probe.vessel(), quantity, today);
        return day == null ? water.on(probe.vessel(), quantity, today.minusDays(1)) : day;
    }
}
