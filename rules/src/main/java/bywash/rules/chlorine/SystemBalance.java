package bywash.rules.chlorine;

import bywash.rules.chlorine.BalanceStep.Came;
import bywash.rules.chlorine.BalanceStep.Dosed;
import bywash.rules.chlorine.BalanceStep.Tested;
import bywash.rules.site.SystemVolume;
import bywash.rules.water.LossRate;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Total residual chlorine in the mixed system water, as a range and as a distribution, by mass balance with the closed forms of
 * {@link bywash.rules.water.MixedTank}. A running inflow counts as evenly spread from its onset to now and is worked out anew each
 * time, so that a better estimate of its litres replaces the older one; when it ends, what it added stays and is lost at the
 * system's rate. What ended, what was tested and what was dosed are kept as steps, each at its own time, so that one that turns
 * out to have been a mistake can be left out as if it had never been.
 */
final class SystemBalance {
    /** Older steps cannot be taken back any more. */
    private static final Duration TAKEN_BACK_WITHIN = Duration.ofDays(30);

    private static final int MOST_STEPS = 300;

    private final LossRate loss;
    private final TreeMap<String, Inflow> running = new TreeMap<>();
    private final TreeMap<String, Instant> endedAt = new TreeMap<>();
    private final List<BalanceStep> steps = new ArrayList<>();
    /** Before the first step that is kept. */
    private Settled base = Settled.CLEAN;
    /** After the last. */
    private Settled settled = Settled.CLEAN;

    private Litres systemL;
    private boolean spilling;
    private @Nullable Instant last;
    private Litres endedL = Litres.of(0);
    private boolean ofUnknown;

    SystemBalance(LossRate loss) {
        this(loss, Litres.of(1));
    }

    /** @param systemL what the system holds before anything is heard, L */
    SystemBalance(LossRate loss, Litres systemL) {
        this.loss = loss;
        this.systemL = systemL;
    }

    /** Time passes; the volume and whether a vessel spills are as known now. */
    void tick(Instant at, SystemVolume volume, boolean spills) {
        systemL = Litres.of(volume);
        spilling = spills;
        last = at;
        if (running.isEmpty() && now().range().likelyMgL() < 1e-3) {
            endedL = Litres.of(0);
            ofUnknown = false;
        }
    }

    private Settled now() {
        Instant at = last;
        return at == null ? settled : settled.after(loss, at);
    }

    /** What an inflow into a vessel has brought up to now. */
    void inflow(String vessel, Inflow inflow) {
        Inflow before = running.get(vessel);
        if (before != null && !before.since().equals(inflow.since())) {
            ended(vessel);
        }
        Instant from = endedAt.get(vessel);
        running.put(vessel, from == null || !from.isAfter(inflow.since()) ? inflow : later(inflow, from));
    }

    /** Cuts off what an earlier inflow has already counted. */
    private static Inflow later(Inflow inflow, Instant from) {
        double whole = inflow.minutes();
        Instant since = from.isBefore(inflow.until()) ? from : inflow.until();
        double share = hours(since, inflow.until()) * 60 / whole;
        Litres l = inflow.litres();
        return inflow.with(since, new Litres(l.lowL() * share, l.likelyL() * share, l.highL() * share));
    }

    /** Nothing runs into this vessel any more. */
    void ended(String vessel) {
        Inflow inflow = running.remove(vessel);
        if (inflow != null) {
            step(new Came(inflow, systemL, spilling));
            endedAt.put(vessel, inflow.until());
            endedL = endedL.plus(inflow.litres());
            ofUnknown |= inflow.unknown();
        }
    }

    /** What was thought to run in counts with another inflow. */
    void dropped(String vessel) {
        running.remove(vessel);
    }

    private void endAll() {
        running.keySet().stream().toList().forEach(this::ended);
    }

    /** One entered late goes where its time is. */
    private void step(BalanceStep step) {
        int place = steps.size();
        while (place > 0 && steps.get(place - 1).at().isAfter(step.at())) {
            place--;
        }
        steps.add(place, step);
        if (place == steps.size() - 1 && !step.at().isBefore(settled.at())) {
            settled = settled.then(step, loss);
        } else {
            again();
        }
        while (steps.size() > MOST_STEPS || steps.get(0).at().isBefore(step.at().minus(TAKEN_BACK_WITHIN))) {
            base = base.then(steps.remove(0), loss);
        }
    }

    private void again() {
        Settled sum = base;
        for (BalanceStep each : steps) {
            sum = sum.then(each, loss);
        }
        settled = sum;
    }

    private Settled withRunning() {
        Settled sum = now();
        for (Inflow inflow : running.values()) {
            sum = sum.came(new Came(inflow, systemL, spilling), loss);
        }
        return sum;
    }

    /** The residual now. */
    Residual residual() {
        return withRunning().range();
    }

    /** The same as a distribution. */
    Belief belief() {
        return withRunning().belief();
    }

    /** A test of the system water: the estimate is narrowed to it, or replaced where they do not agree. */
    void tested(Instant at, double totalMgL, double errorMgL) {
        endAll();
        step(new Tested(at, totalMgL, errorMgL));
    }

    /** A test was taken back: all is as if it had not been made. */
    void untested(Instant at, double totalMgL) {
        takeBack(s -> s instanceof Tested t && t.at().equals(at) && t.totalMgL() == totalMgL);
    }

    /** A dechlorinator went in that can remove so much, mg as Cl2; what it did is not known before a test. */
    void dosed(Instant at, double removesMg) {
        endAll();
        step(new Dosed(at, removesMg, systemL));
    }

    /** A dose was taken back: all is as if it had not been given. */
    void undosed(Instant at, double removesMg) {
        takeBack(s -> s instanceof Dosed d && d.at().equals(at) && d.removesMg() == removesMg);
    }

    private void takeBack(Predicate<BalanceStep> which) {
        for (int i = 0; i < steps.size(); i++) {
            if (which.test(steps.get(i))) {
                steps.remove(i);
                again();
                return;
            }
        }
    }

    /** All up to now; what runs counts as come in. */
    ChlorineMemory.SystemPart memory() {
        List<BalanceStep> all = new ArrayList<>(steps);
        Map<String, Instant> ends = new TreeMap<>(endedAt);
        running.forEach((vessel, inflow) -> {
            all.add(new Came(inflow, systemL, spilling));
            ends.put(vessel, inflow.until());
        });
        return new ChlorineMemory.SystemPart(
                base.at(),
                base.range(),
                of(all, Came.class),
                of(all, Tested.class),
                of(all, Dosed.class),
                ends,
                entered(),
                unknownSource());
    }

    private static <S extends BalanceStep> List<S> of(List<BalanceStep> all, Class<S> kind) {
        return all.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /** Goes on where another ended; nothing runs. */
    void restore(Instant at, ChlorineMemory.SystemPart memory) {
        running.clear();
        endedAt.clear();
        endedAt.putAll(memory.endedAt());
        steps.clear();
        steps.addAll(memory.came());
        steps.addAll(memory.tested());
        steps.addAll(memory.dosed());
        steps.sort(Comparator.comparing(BalanceStep::at));
        base = Settled.of(memory.baseAt(), memory.base());
        endedL = memory.entered();
        ofUnknown = memory.ofUnknown();
        last = at;
        again();
    }

    /** Inflows that run now. */
    Iterable<Inflow> running() {
        return running.values();
    }

    /** Whether some of what came in since the system was last clean is of unknown source. */
    boolean unknownSource() {
        return ofUnknown || running.values().stream().anyMatch(Inflow::unknown);
    }

    /** Where what runs comes from, in words; empty where nothing runs. */
    String sources() {
        return running.values().stream().map(Inflow::sourceWords).distinct().collect(Collectors.joining(", "));
    }

    /** Litres that came in since the system was last clean. */
    Litres entered() {
        Litres sum = endedL;
        for (Inflow inflow : running.values()) {
            sum = sum.plus(inflow.litres());
        }
        return sum;
    }

    double enteredL() {
        return entered().likelyL();
    }

    Litres systemL() {
        return systemL;
    }

    LossRate loss() {
        return loss;
    }

    private static double hours(Instant from, Instant to) {
        return StrictMath.max(0, Duration.between(from, to).toMillis() / 3_600_000.0);
    }
}
