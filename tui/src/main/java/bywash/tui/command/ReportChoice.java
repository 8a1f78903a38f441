package bywash.tui.command;

import bywash.ingest.recording.IsoTime;
import bywash.rules.alarm.AlarmSpell;
import bywash.rules.site.Site;
import bywash.tui.account.Account;
import bywash.tui.account.Chronicle;
import bywash.tui.account.IncidentEntry;
import bywash.tui.report.IncidentTable;
import bywash.tui.report.Report;
import bywash.tui.report.SpanReport;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds in a record what a report was asked of. */
final class ReportChoice {
    private static final Duration BEFORE = Duration.ofMinutes(30);
    private static final Duration AFTER = Duration.ofHours(2);

    private final Chronicle record;
    private final Site site;
    private final ReportOptions options;

    ReportChoice(Chronicle record, Site site, ReportOptions options) {
        this.record = record;
        this.site = site;
        this.options = options;
    }

    /** What was asked for is not there, or was not understood; the message is for the grower. */
    static final class NotThere extends Exception {
        private static final long serialVersionUID = 1L;

        NotThere(String message) {
            super(message);
        }
    }

    private List<IncidentEntry> incidents() throws IOException {
        return IncidentEntry.of(AlarmSpell.of(record.transitions()));
    }

    private String known() throws IOException {
        List<IncidentEntry> all = incidents();
        return all.isEmpty()
                ? "there is no incident in " + record.name()
                : "the incidents in " + record.name() + ":\n"
                        + IncidentTable.lines(all, site).stripTrailing();
    }

    /** The incidents, newest first, with what the record reaches over. */
    String list() throws IOException {
        Chronicle.Reach reach = record.reach();
        List<IncidentEntry> all = incidents();
        String head = site.name() + ", " + record.name() + " of " + local(reach.from()) + " to " + local(reach.to())
                + " (" + zone() + ")\n";
        if (all.isEmpty()) {
            return head + "No incident. Give --day, --month, --from and --to, or --season.\n";
        }
        return head + "began             ended             priority  alarms    incident\n"
                + IncidentTable.lines(all, site)
                + "Give --incident ID (or latest), --day, --month, --from and --to, or --season.\n";
    }

    Report report() throws IOException, NotThere {
        if (options.incident != null) {
            return incident(options.incident);
        }
        if (options.day != null) {
            LocalDate day = day(options.day);
            return span(
                    day.atStartOfDay(zone()).toInstant(),
                    day.plusDays(1).atStartOfDay(zone()).toInstant(),
                    day.toString());
        }
        if (options.month != null) {
            YearMonth month = month(options.month);
            return span(
                    month.atDay(1).atStartOfDay(zone()).toInstant(),
                    month.plusMonths(1).atDay(1).atStartOfDay(zone()).toInstant(),
                    month.toString());
        }
        Chronicle.Reach reach = record.reach();
        Instant from = time("--from", options.from, reach.from());
        Instant to = time("--to", options.to, reach.to().plusMillis(1));
        if (!from.isBefore(to)) {
            throw new NotThere("--from " + local(from) + " is not before --to " + local(to) + "; give an earlier one");
        }
        return span(from, to, local(from) + " to " + local(to));
    }

    private Report incident(String wanted) throws IOException, NotThere {
        record.reach();
        List<IncidentEntry> all = incidents();
        List<IncidentEntry> fit = wanted.equals("latest")
                ? all.subList(Math.max(0, all.size() - 1), all.size())
                : all.stream().filter(i -> i.id().equals(wanted)).toList();
        if (fit.isEmpty()) {
            fit = all.stream().filter(i -> i.id().startsWith(wanted)).toList();
        }
        if (fit.size() != 1) {
            String what = fit.isEmpty() ? "no such incident; " : "more than one incident begins so; ";
            throw new NotThere("--incident " + wanted + ": " + what + known());
        }
        IncidentEntry one = fit.get(0);
        Instant end = one.ended() == null ? Instant.MAX : one.ended().plus(AFTER);
        Account account = record.account(one.began().minus(BEFORE), least(end));
        return SpanReport.incident(account, one);
    }

    private Report span(Instant from, Instant to, String what) throws IOException, NotThere {
        Chronicle.Reach reach = record.reach();
        if (!to.isAfter(reach.from()) || from.isAfter(reach.to())) {
            throw new NotThere("nothing is on record of " + what + "; " + record.name() + " reaches from "
                    + local(reach.from()) + " to " + local(reach.to()) + "; " + known());
        }
        Account account = record.account(from.isBefore(reach.from()) ? reach.from() : from, least(to));
        return SpanReport.span(account, what);
    }

    /** Not beyond the end of the record: the time to come is no time without alarms. */
    private Instant least(Instant to) throws IOException {
        Instant end = record.reach().to().plusMillis(1);
        return to.isAfter(end) ? end : to;
    }

    private ZoneId zone() {
        return site.timeZone();
    }

    private String local(Instant at) {
        return at.atZone(zone()).toLocalDateTime().toString().replace('T', ' ').substring(0, 16);
    }

    private static LocalDate day(String text) throws NotThere {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new NotThere("--day " + text + ": not a day; give one such as 2026-05-14");
        }
    }

    private static YearMonth month(String text) throws NotThere {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new NotThere("--month " + text + ": not a month; give one such as 2026-05");
        }
    }

    private Instant time(String option, @Nullable String text, Instant otherwise) throws NotThere {
        if (text == null) {
            return otherwise;
        }
        Instant utc = IsoTime.parse(text);
        if (utc != null) {
            return utc;
        }
        try {
            return text.length() == 10
                    ? LocalDate.parse(text).atStartOfDay(zone()).toInstant()
                    : LocalDateTime.parse(text.replace(' ', 'T')).atZone(zone()).toInstant();
        } catch (DateTimeException e) {
            throw new NotThere(option + " " + text + ": not a time; give one such as 2026-05-14T18:00");
        }
    }
}
