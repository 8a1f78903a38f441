package bywash.tui.report;

import bywash.rules.alarm.AlarmSpell;
import bywash.rules.site.Site;
import bywash.tui.account.IncidentEntry;
import java.util.List;
import java.util.stream.Collectors;

/** Incidents, one a row. */
public final class IncidentTable {
    private IncidentTable() {}

    static Table of(List<IncidentEntry> incidents, Site site, Times times) {
        Table.Builder table =
                new Table.Builder("incidents", "began", "ended", "priority", "first", "alarms", "incident");
        for (IncidentEntry i : incidents) {
            table.row(
                    times.of(i.began(), site.timeZone()),
                    i.ended() == null ? "still stands" : times.of(i.ended(), site.timeZone()),
                    i.priority().word(),
                    Cells.text(name(i.cause())),
                    Cells.text(i.spells().stream()
                            .map(IncidentTable::name)
                            .distinct()
                            .collect(Collectors.joining(", "))),
                    i.id());
        }
        return table.build();
    }

    /** A line each, newest first, for a terminal. */
    public static String lines(List<IncidentEntry> incidents, Site site) {
        StringBuilder text = new StringBuilder();
        for (int n = incidents.size() - 1; n >= 0; n--) {
            IncidentEntry i = incidents.get(n);
            String end = i.ended() == null ? "still stands" : Times.LOCAL.of(i.ended(), site.timeZone());
            text.append(String.format(
                    java.util.Locale.ROOT,
                    "%s  %-16s  %-8s  %2d alarm%s  %s%n",
                    Times.LOCAL.of(i.began(), site.timeZone()),
                    end,
                    i.priority().word(),
                    i.spells().size(),
                    i.spells().size() == 1 ? " " : "s",
                    Cells.text(i.id())));
        }
        return text.toString();
    }

    private static String name(AlarmSpell spell) {
        return spell.kind().word() + " " + spell.subject();
    }
}
