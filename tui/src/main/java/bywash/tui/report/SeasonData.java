package bywash.tui.report;

import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Site;
import bywash.tui.view.StockUnits;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/**
 * All that a season's report is made of.
 *
 * @param days of each probe with days, by its id, in the order of the site file
 * @param entries as entered, in order, without those taken back
 * @param withdrawn what was taken back, in order
 */
public record SeasonData(
        Site site,
        Instant from,
        Instant to,
        Map<String, List<DayValue>> days,
        List<WaterTest> tests,
        List<AlarmTransition> transitions,
        List<OperatorEntry> entries,
        List<Withdraw> withdrawn,
        SeasonStatus status) {

    LocalDate firstDay() {
        return day(from);
    }

    LocalDate lastDay() {
        return day(to);
    }

    LocalDate day(Instant at) {
        return at.atZone(site.timeZone()).toLocalDate();
    }

    /** Such as {@code 2026-08-03 09:20}, local to the site. */
    String when(Instant at) {
        return at.atZone(site.timeZone())
                .toLocalDateTime()
                .toString()
                .replace('T', ' ')
                .substring(0, 16);
    }

    /** A mass of one fish or a day's feed in the unit of the site. */
    double mass(double grams) {
        return new StockUnits(site.units()).massValue(grams);
    }

    String massUnit() {
        return new StockUnits(site.units()).massUnit();
    }
}
