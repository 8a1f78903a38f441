package bywash.tui.report;

import bywash.rules.alarm.AlarmSpell;
import bywash.rules.site.Site;
import bywash.tui.account.Account;
import bywash.tui.view.DisplayUnits;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the sections of a span's report draw on.
 *
 * @param incident the one incident it is about; null for all
 */
record Span(Account account, @Nullable String incident) {
    Site site() {
        return account.site();
    }

    ZoneId zone() {
        return site().timeZone();
    }

    DisplayUnits units() {
        return new DisplayUnits(site().units());
    }

    String local(@Nullable Instant at) {
        return Times.LOCAL.of(at, zone());
    }

    /** The alarms it is about. */
    List<AlarmSpell> spells() {
        return account.spells().stream()
                .filter(s -> incident == null || s.incident().equals(incident))
                .toList();
    }

    boolean concerns(String ofIncident) {
        return incident == null || incident.equals(ofIncident);
    }
}
