package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.Condition;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.recovery.AmmoniaLevel;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.text.Figures;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Ammonia of the last test, judged anew at each tick with the pH and temperature of the water now. */
final class NitrogenRules {
    /** A manual pH or temperature counts as the water's own for so long. */
    private static final Duration MANUAL_HOLDS = Duration.ofHours(24);

    private final Site site;
    private final AlarmBoard board;
    private final TreeMap<String, WaterTest> byQuantity = new TreeMap<>();
    private SpeciesLimits limits = SpeciesLimits.GENERAL;

    NitrogenRules(Site site, AlarmBoard board) {
        this.site = site;
        this.board = board;
    }

    /** What the ammonia is held against from here on. */
    void limits(SpeciesLimits newLimits) {
        limits = newLimits;
    }

    /** A test of system water; a reserve's says nothing of the fish. */
    void test(WaterTest test) {
        if (!site.isReserve(test.vessel())) {
            byQuantity.put(test.quantity(), test);
        }
    }

    /** A test was taken back; the one before it holds, where there is one. */
    void withdrawn(Instant at, WaterTest undone, @Nullable WaterTest before) {
        WaterTest now = byQuantity.get(undone.quantity());
        if (now == null || !now.equals(undone)) {
            return;
        }
        byQuantity.remove(undone.quantity());
        if (undone.quantity().equals("total-ammonia")) {
            board.set(AlarmKind.AMMONIA_TOXIC, undone.vessel(), at, null);
        }
        if (before != null) {
            test(before);
        }
    }

    void tick(Instant at, Collection<ProbeMonitor> monitors, Stocking stocking) {
        WaterTest ammonia = byQuantity.get("total-ammonia");
        if (ammonia == null) {
            return;
        }
        AmmoniaLevel level = AmmoniaLevel.at(
                StrictMath.min(1000, ammonia.value()),
                value(at, monitors, Quantity.PH, ammonia.vessel()),
                value(at, monitors, Quantity.TEMPERATURE, ammonia.vessel()));
        boolean raise = stocking == Stocking.FISH && !passed(level).isEmpty();
        board.set(AlarmKind.AMMONIA_TOXIC, ammonia.vessel(), at, raise ? toxic(ammonia, level) : null);
    }

    private List<String> passed(AmmoniaLevel level) {
        return level.passed(limits.unionisedMgL(), limits.unionisedOf());
    }

    private Condition toxic(WaterTest ammonia, AmmoniaLevel level) {
        List<String> passed = passed(level);
        return Condition.of(
                "Ammonia in " + ammonia.vessel() + " is toxic: " + Figures.of(level.unionisedMgL(), 3)
                        + " mg/L un-ionised of " + Figures.of(level.tanMgL(), 2) + " mg/L",
                level.basis() + " " + String.join("; ", passed) + ".",
                null,
                "tan_mg_l",
                Text.round(level.tanMgL(), 2),
                "nh3_n_mg_l",
                Text.round(level.unionisedMgL(), 3),
                "ph",
                Text.round(level.ph(), 2),
                "temperature_cel",
                Text.round(level.temperatureC(), 1));
    }

    /** The probe of the tested vessel, else of any other in the system, else a manual test of the last day; else NaN. */
    private double value(Instant at, Collection<ProbeMonitor> monitors, Quantity quantity, String vessel) {
        ProbeMonitor best = null;
        for (ProbeMonitor monitor : monitors) {
            boolean good = monitor.probe().quantity() == quantity
                    && monitor.health(at) == ProbeStatus.Health.GOOD
                    && !site.isReserve(monitor.probe().vessel());
            if (good && (best == null || monitor.probe().vessel().equals(vessel))) {
                best = monitor;
            }
        }
        return best != null ? best.value() : manual(at, byQuantity.get(quantity.word()));
    }

    private static double manual(Instant at, @Nullable WaterTest test) {
        return test == null || test.at().isBefore(at.minus(MANUAL_HOLDS)) ? Double.NaN : test.value();
    }
}
