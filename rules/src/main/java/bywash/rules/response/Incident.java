package bywash.rules.response;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding;
import bywash.rules.response.IncidentSummary.Raised;
import bywash.rules.site.Mains;
import bywash.rules.site.Site;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** One incident from its first alarm on. */
final class Incident {
    private static final int MOST_EVENTS = 200;
    private static final Duration WRITE_EVERY = Duration.ofSeconds(60);
    private static final Duration OPEN_AFTER = Duration.ofDays(1);

    private record Tick(Instant at, String note) {}

    private final String id;
    private final Site site;
    private final Instant began;
    private final List<SheetEvent> events = new ArrayList<>();
    private final Set<String> active = new TreeSet<>();
    private final Set<Raised> raised = new TreeSet<>();
    private final TreeMap<String, Tick> done = new TreeMap<>();
    private final WaterCount water = new WaterCount();
    private @Nullable Instant ended;
    private @Nullable ResidualEstimate peak;
    private @Nullable Instant peakAt;
    private @Nullable ResponseSheet sheet;
    private @Nullable Instant writtenAt;

    Incident(String id, Site site, Instant began) {
        this.id = id;
        this.site = site;
        this.began = began;
    }

    String id() {
        return id;
    }

    boolean standing() {
        return ended == null;
    }

    void transition(AlarmTransition t) {
        String key = t.kind().word() + " " + t.subject();
        boolean holds = switch (t.state()) {
            case UNACKNOWLEDGED, ACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> true;
            case RETURNED_UNACKNOWLEDGED, NORMAL -> false;
        };
        if (holds) {
            active.add(key);
            raised.add(new Raised(t.kind(), t.subject()));
            ended = null;
        } else if (active.remove(key) && active.isEmpty()) {
            ended = t.at();
        }
        writtenAt = null;
        event(t.at(), key + " " + t.state().word() + ": " + t.message());
    }

    /** Whether entries still belong to it: while it stands and a day longer. */
    boolean open(Instant at) {
        Instant end = ended;
        return end == null || !at.isAfter(end.plus(OPEN_AFTER));
    }

    void event(Instant at, String words) {
        if (events.size() < MOST_EVENTS) {
            events.add(new SheetEvent(at, words));
        }
        refresh();
    }

    private void refresh() {
        ResponseSheet last = sheet;
        if (last != null) {
            sheet = withTicks(last);
        }
    }

    void done(String step, Instant at, String note) {
        done.put(step, new Tick(at, note));
        refresh();
    }

    /** What is known now; a sheet that has ended keeps what it says. */
    void tick(Readings now) {
        if (!standing()) {
            return;
        }
        for (FlowFinding finding : now.findings()) {
            water.take(finding);
        }
        ResidualEstimate highest = peak;
        if (highest == null || now.residual().likelyUgL() > highest.likelyUgL()) {
            peak = now.residual();
            peakAt = now.at();
        }
        Instant before = writtenAt;
        if (before == null || !now.at().isBefore(before.plus(WRITE_EVERY))) {
            writtenAt = now.at();
            sheet = write(now);
        }
    }

    private ResponseSheet write(Readings now) {
        boolean entering = raised.stream().anyMatch(r -> r.kind() != AlarmKind.UNPLANNED_LOSS);
        Mains mains = site.mains();
        List<String> reserves =
                site.vessels(VesselRole.RESERVE).stream().map(v -> v.id()).toList();
        return withTicks(new ResponseSheet(
                id,
                site.name(),
                began,
                now.at(),
                ended,
                water.words(site.timeZone()),
                residual(now),
                RuledOut.of(now, reserves),
                events,
                SheetSteps.of(now, entering, mains),
                SheetSteps.CAUTIONS));
    }

    private ResponseSheet withTicks(ResponseSheet s) {
        List<SheetStep> steps = s.steps().stream()
                .map(step -> {
                    Tick tick = done.get(step.id());
                    return tick == null ? step : step.done(tick.at, tick.note);
                })
                .toList();
        return new ResponseSheet(
                s.incident(),
                s.site(),
                s.began(),
                s.asOf(),
                ended,
                s.water(),
                s.residual(),
                s.rulesOut(),
                events,
                steps,
                s.cautions());
    }

    private List<String> residual(Readings now) {
        List<String> words = new ArrayList<>();
        words.add("At " + SiteTime.words(now.at(), site.timeZone()) + ": " + range(now.residual()));
        ResidualEstimate highest = peak;
        Instant when = peakAt;
        if (highest != null && when != null) {
            words.add("Peak at " + SiteTime.words(when, site.timeZone()) + ": " + range(highest));
        }
        words.addAll(now.residual().evidence());
        return words;
    }

    private static String range(ResidualEstimate e) {
        double acute = e.acute().limitUgL();
        return String.format(
                Locale.ROOT,
                "%.0f ug/L likely, %.0f to %.0f; chance above the acute %.0f ug/L (%s) %.0f %%",
                e.likelyUgL(),
                e.lowUgL(),
                e.highUgL(),
                acute,
                acute == ResidualEstimate.ACUTE_UG_L ? "US EPA 1985" : "of the species here",
                100 * e.probability());
    }

    @Nullable
    ResponseSheet sheet() {
        return sheet;
    }

    /** What it comes to, for recovery and prevention. */
    IncidentSummary summary() {
        ResidualEstimate highest = peak;
        return new IncidentSummary(
                id,
                began,
                ended,
                raised,
                water.unplannedL(),
                highest == null ? 0 : highest.likelyUgL(),
                highest == null ? 0 : highest.highUgL());
    }
}
