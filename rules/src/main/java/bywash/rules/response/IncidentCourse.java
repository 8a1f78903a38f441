package bywash.rules.response;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding;
import bywash.rules.response.IncidentFigures.Peak;
import bywash.rules.response.IncidentFigures.Written;
import bywash.rules.response.IncidentSummary.Raised;
import bywash.rules.site.Mains;
import bywash.rules.site.Site;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * One incident from its first alarm on: which of its alarms stand, what moved, the highest residual, the ticks, and the sheet that is
 * written of it. One writer.
 */
final class IncidentCourse {
    private static final Duration WRITE_EVERY = Duration.ofSeconds(60);
    private static final Duration OPEN_AFTER = Duration.ofDays(1);

    private record Tick(Instant at, String note) {}

    private final String id;
    private final Site site;
    private final Instant began;
    private final IncidentEvents events;
    private final Set<String> active = new TreeSet<>();
    private final Set<Raised> raised = new TreeSet<>();
    private final TreeMap<String, Tick> done = new TreeMap<>();
    private WaterCount water = new WaterCount();
    private @Nullable Instant ended;
    private @Nullable Instant changedAt;
    private @Nullable Peak peak;
    private @Nullable ResponseSheet sheet;
    private @Nullable Instant writtenAt;

    IncidentCourse(String id, Site site, Instant began) {
        this.id = id;
        this.site = site;
        this.began = began;
        this.events = new IncidentEvents(site.timeZone());
    }

    String id() {
        return id;
    }

    Instant began() {
        return began;
    }

    boolean standing() {
        return ended == null;
    }

    void transition(AlarmTransition t) {
        String key = key(t.kind(), t.subject());
        raised.add(new Raised(t.kind(), t.subject()));
        if (t.state().holds()) {
            active.add(key);
            ended = null;
        } else {
            active.remove(key);
            ended = active.isEmpty() && ended == null ? t.at() : ended;
        }
        writtenAt = null;
        changedAt = t.at();
        events.changed(t);
        refresh();
    }

    private static String key(AlarmKind kind, String subject) {
        return kind.word() + " " + subject;
    }

    /** The record of it is damaged: what is known is what is left. */
    void damaged(Instant at, String words) {
        event(at, words);
    }

    /** An alarm of it stands, whatever is left of the lines that told so. */
    void stands(AlarmMemory alarm) {
        active.add(key(alarm.kind(), alarm.subject()));
        raised.add(new Raised(alarm.kind(), alarm.subject()));
        ended = null;
    }

    /** No alarm of it stands; where no line told of its end, it was over by then. */
    void over(Instant at) {
        if (ended == null && active.isEmpty()) {
            ended = at;
        }
    }

    /** Whether entries still belong to it: while it stands and a day longer. */
    boolean open(Instant at) {
        Instant end = ended;
        return end == null || !at.isAfter(end.plus(OPEN_AFTER));
    }

    void event(Instant at, String words) {
        events.add(at, words);
        refresh();
    }

    private void refresh() {
        ResponseSheet last = sheet;
        if (last != null) {
            sheet = withTicks(last, standing() && writtenAt != null ? water.words(site.timeZone()) : last.water());
        }
    }

    void done(String step, Instant at, String note) {
        done.put(step, new Tick(at, note));
        refresh();
    }

    /**
     * What is known now; a sheet that has ended keeps what it says.
     *
     * @return whether the sheet was written anew
     */
    boolean tick(Readings now) {
        if (!standing()) {
            return false;
        }
        for (FlowFinding finding : now.findings()) {
            water.take(finding);
        }
        ResidualEstimate estimate = now.residual();
        Peak highest = peak;
        if (highest == null || estimate.likelyUgL() > highest.likelyUgL()) {
            peak = Peak.of(estimate, now.at());
        }
        Instant before = writtenAt;
        if (before != null && now.at().isBefore(before.plus(WRITE_EVERY))) {
            refresh(); // the litres stand beside those of the alarm, which are new at each tick
            return false;
        }
        writtenAt = now.at();
        sheet = write(now);
        return true;
    }

    private ResponseSheet write(Readings now) {
        boolean entering = raised.stream().anyMatch(r -> r.kind() != AlarmKind.UNPLANNED_LOSS);
        Mains mains = site.mains();
        List<String> reserves =
                site.vessels(VesselRole.RESERVE).stream().map(v -> v.id()).toList();
        return withTicks(
                new ResponseSheet(
                        id,
                        site.name(),
                        began,
                        now.at(),
                        ended,
                        List.of(),
                        SheetResidual.words(now.residual(), now.at(), peak, site.timeZone()),
                        RuledOut.of(now, reserves),
                        events.all(),
                        SheetSteps.of(now, entering, mains),
                        SheetSteps.CAUTIONS),
                water.words(site.timeZone()));
    }

    private ResponseSheet withTicks(ResponseSheet s, List<String> waterNow) {
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
                waterNow,
                s.residual(),
                s.rulesOut(),
                events.all(),
                steps,
                s.cautions());
    }

    @Nullable
    ResponseSheet sheet() {
        return sheet;
    }

    /** What a restart has to be told of it beside its alarm lines and the entries. */
    IncidentFigures figures() {
        ResponseSheet s = sheet;
        return new IncidentFigures(
                id,
                peak,
                water.runs(),
                s == null
                        ? null
                        : new Written(
                                s.asOf(),
                                s.water(),
                                s.residual(),
                                s.rulesOut(),
                                s.steps().stream()
                                        .map(step -> SheetStep.open(step.id(), step.words(), step.caution()))
                                        .toList()));
    }

    /** Once it has been told its alarm lines and the entries: what readings had added. */
    void restore(IncidentFigures figures, Instant at) {
        peak = figures.peak();
        water.restore(figures.water(), at);
        Written w = figures.sheet();
        if (w != null) {
            sheet = withTicks(
                    new ResponseSheet(
                            id,
                            site.name(),
                            began,
                            w.asOf(),
                            ended,
                            w.water(),
                            w.residual(),
                            w.rulesOut(),
                            events.all(),
                            w.steps(),
                            SheetSteps.CAUTIONS),
                    w.water());
            Instant changed = changedAt;
            writtenAt = changed == null || changed.isBefore(w.asOf()) ? w.asOf() : null;
        }
    }

    /** The same instead, of one that has seen its readings itself. */
    void restore(IncidentCourse same) {
        peak = same.peak;
        water = same.water;
        writtenAt = same.writtenAt;
        sheet = same.sheet;
        refresh();
    }

    /** What it comes to, for recovery and prevention. */
    IncidentSummary summary() {
        Peak highest = peak;
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
